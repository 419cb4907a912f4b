using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>Pieces in whole numbers that together have exactly the area of some equal boards: only then can boards be filled without waste.</summary>
internal sealed class TileSet
{
    private TileSet(double unit, long width, long height, int boards, IReadOnlyList<Tile> tiles, int pieces)
    {
        (Unit, Width, Height, Boards, Pieces) = (unit, width, height, boards, pieces);
        foreach (Tile tile in tiles)
        {
            int n = tile.Corners.Length;
            for (int c = 0; c < n; c++)
            {
                Enter(Going, (tile.Corners[(c + 1) % n] - tile.Corners[c]).Direction(), (tile, c));
                Enter(Coming, (tile.Corners[c] - tile.Corners[(c + n - 1) % n]).Direction(), (tile, c));
            }
        }
    }

    /// <summary>Millimetres of one unit.</summary>
    internal double Unit { get; }

    internal long Width { get; }

    internal long Height { get; }

    internal int Boards { get; }

    /// <summary>How many copies of pieces there are.</summary>
    internal int Pieces { get; }

    /// <summary>Corners by the direction of the side that goes out from them.</summary>
    internal Dictionary<TilePoint, List<(Tile Tile, int Corner)>> Going { get; } = [];

    /// <summary>Corners by the direction of the side that comes into them.</summary>
    internal Dictionary<TilePoint, List<(Tile Tile, int Corner)>> Coming { get; } = [];

    /// <summary>The set of a problem; null where gap, margins, angles, holes or areas rule waste-free boards out.</summary>
    internal static TileSet? Of(ContourJob job)
    {
        ContourProblem problem = job.Problem;
        if (problem.GapMm > 0 || problem.Stocks is not [{ EdgeMarginMm: 0, KeepOuts: null or [] } stock] || !BoardKind.IsRectangle(stock.Area)
            || problem.Pieces.Any(p => p.Angles.Degrees.Any(d => d % 90 != 0) || p.Area.Parts > 1 || p.Area.Holes().Count > 0))
            return null;

        List<List<PointMm>> rings = [.. problem.Pieces.Select(p => Rings.Of(p.Area)[0])];
        RectMm bounds = stock.Area.Bounds;
        double[] numbers = [bounds.WidthMm, bounds.HeightMm, .. rings.SelectMany(r => r).SelectMany(p => (double[])[p.XMm, p.YMm])];
        double unit = numbers.All(n => IsWhole(n)) ? 1 : 0.001;
        if (!numbers.All(n => IsWhole(n / unit) && Math.Abs(n / unit) < 1e8))
            return null;

        long width = (long)Math.Round(bounds.WidthMm / unit), height = (long)Math.Round(bounds.HeightMm / unit);
        List<Tile> tiles = [.. Enumerable.Range(0, job.Items).SelectMany(i => Turned(i, rings[job.PieceOf(i)], job.FormOf(i).Degrees, unit))];
        Int128 area = 0;
        foreach (Tile tile in tiles.DistinctBy(t => t.Piece))
            area += tile.DoubleArea;
        Int128 board = 2 * (Int128)width * height;
        return area % board == 0 && area / board <= 1000 ? new(unit, width, height, (int)(area / board), tiles, job.Items) : null;
    }

    private static bool IsWhole(double number) => Math.Abs(number - Math.Round(number)) < 1e-7;

    /// <summary>A piece at all its angles that look different.</summary>
    private static IEnumerable<Tile> Turned(int item, List<PointMm> ring, IReadOnlyList<double> degrees, double unit)
    {
        HashSet<string> seen = [];
        for (int angle = 0; angle < degrees.Count; angle++)
        {
            (double sin, double cos) = Contours.Turned.SinCos(degrees[angle]);
            Tile tile = new(item, angle, [.. ring.Select(p => new TilePoint(
                (long)Math.Round(((cos * p.XMm) - (sin * p.YMm)) / unit), (long)Math.Round(((sin * p.XMm) + (cos * p.YMm)) / unit)))]);
            if (seen.Add(string.Join(' ', tile.Corners.Select(c => Invariant($"{c.X - tile.MinX},{c.Y - tile.MinY}")).Order(StringComparer.Ordinal))))
                yield return tile;
        }
    }

    private static void Enter(Dictionary<TilePoint, List<(Tile, int)>> table, TilePoint direction, (Tile, int) corner)
    {
        if (!table.TryGetValue(direction, out List<(Tile, int)>? list))
            table.Add(direction, list = []);
        list.Add(corner);
    }
}
