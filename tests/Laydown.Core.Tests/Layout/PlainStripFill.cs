using Laydown.Layout.Rectangles;

namespace Laydown.Core.Tests.Layout;

/// <summary>The filling of a strip said plainly: a column of heights for every unit of width, and every piece looked at for every gap.</summary>
internal static class PlainStripFill
{
    public static List<(int Piece, int X, int Y)> Run(IReadOnlyList<RectPiece> order, int width, int height)
    {
        int[] column = new int[width];
        List<int> left = [.. Enumerable.Range(0, order.Count)];
        List<(int, int, int)> placed = [];
        while (left.Count > 0 && column.Min() < height)
        {
            int y = column.Min(), x = Array.IndexOf(column, y), gap = 0;
            while (x + gap < width && column[x + gap] == y)
                gap++;
            int leftWall = (x > 0 ? column[x - 1] : height) - y, rightWall = (x + gap < width ? column[x + gap] : height) - y;
            List<int> fitting = [.. left.Where(i => order[i].Width <= gap && order[i].Height <= height - y)];
            if (fitting.Count == 0)
            {
                Array.Fill(column, y + Math.Min(leftWall, rightWall), x, gap);
                continue;
            }

            int best = fitting.OrderByDescending(i => Score(order[i], gap, leftWall, rightWall)).ThenBy(i => i).First();
            bool loneLow = order[best].Width < gap && order[best].Height == Math.Min(leftWall, rightWall) && leftWall != rightWall;
            bool atRight = order[best].Width < gap && ((leftWall < rightWall) != loneLow);
            int at = atRight ? x + gap - order[best].Width : x;
            Array.Fill(column, y + order[best].Height, at, order[best].Width);
            placed.Add((best, at, y));
            left.Remove(best);
        }

        return placed;
    }

    private static int Score(RectPiece piece, int gap, int leftWall, int rightWall)
    {
        int level = piece.Height == Math.Max(leftWall, rightWall) ? 2 : piece.Height == Math.Min(leftWall, rightWall) ? 1 : 0;
        return piece.Width == gap ? 3 + level : level;
    }
}
