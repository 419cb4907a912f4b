using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Strips;

/// <summary>Heights that no filling can be under.</summary>
internal static class StripBounds
{
    private const int MostTried = 64;

    /// <summary>The largest of: the highest piece, and the area over the width where wide pieces count as the whole width and narrow ones as nothing.</summary>
    /// <remarks>
    /// Two strips count by area alone. Beside a piece wider than the width less d nothing of width d or more can lie; so pieces narrower than d may be left out and such wide
    /// ones counted in full ([Fekete2001], the first of its functions), for every d that is the width of a piece.
    /// </remarks>
    internal static int Least(StripProblem problem)
    {
        int width = problem.Usable;
        long most = problem.Pieces.Max(p => Ways(p, problem.Widest).Min(w => (long)w.Height));
        int[] narrow = problem.BarWidth > 0 ? [0] : [.. problem.Pieces.SelectMany(p => Ways(p, width)).Select(w => w.Width).Where(w => w * 2L <= width).Append(0).Distinct().Order()];
        int every = (narrow.Length / MostTried) + 1;
        for (int i = 0; i < narrow.Length; i += every)
        {
            Int128 area = 0;
            foreach (RectPiece p in problem.Pieces)
                area += Counted(p, width, narrow[i]) * p.Copies;
            most = Math.Max(most, (long)Int128.Min(int.MaxValue, (area + width - 1) / width));
        }

        return (int)Math.Min(int.MaxValue, most);
    }

    private static Int128 Counted(RectPiece piece, int strip, int narrow)
    {
        Int128 upright = piece.Width <= strip ? (Int128)Counted(piece.Width, strip, narrow) * piece.Height : Int128.MaxValue;
        Int128 turned = piece.MayTurn && piece.Height <= strip ? (Int128)Counted(piece.Height, strip, narrow) * piece.Width : Int128.MaxValue;
        return Int128.Min(upright, turned);
    }

    private static long Counted(int width, int strip, int narrow) => width > strip - narrow ? strip : width < narrow ? 0 : width;

    private static IEnumerable<(int Width, int Height)> Ways(RectPiece piece, int width)
    {
        if (piece.Width <= width)
            yield return (piece.Width, piece.Height);
        if (piece.MayTurn && piece.Height <= width)
            yield return (piece.Height, piece.Width);
    }
}
