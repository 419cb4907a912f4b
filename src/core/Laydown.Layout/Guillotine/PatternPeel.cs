using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Guillotine;

/// <summary>High quantities: sheets that are filled well and can be repeated many times are taken first, so that few different layouts arise.</summary>
/// <remarks>A sheet repeated R times may carry of each piece at most its copies divided by R. R is halved until the sheet is nearly as full as without that limit (from memory).
/// Pieces of a group are left to the search, which keeps them together: on a sheet repeated many times a group would be torn over all of them.</remarks>
internal static class PatternPeel
{
    /// <summary>With fewer copies the search looks at each of its own.</summary>
    private const int ManyCopies = 300;

    /// <summary>Copies of a type on average from which on layouts are repeated.</summary>
    private const int ManyOfOne = 8;

    /// <summary>So many sheets are left to the search.</summary>
    private const int SheetsLeft = 4;

    /// <summary>Share of a sheet that a repeated layout may be emptier than the fullest.</summary>
    private const double Slack = 0.01;

    private const int Steps = 300;

    /// <summary>Whether a problem has high quantities of pieces that want no company.</summary>
    internal static bool Wanted(RectProblem problem)
    {
        RectPiece[] alone = [.. problem.Pieces.Where(IsAlone)];
        long copies = alone.Sum(p => (long)p.Copies);
        return copies > ManyCopies && copies >= (long)ManyOfOne * alone.Length;
    }

    /// <summary>Repeated sheets, and the problem that is left.</summary>
    internal static (IReadOnlyList<RectSheet> Sheets, RectProblem Left) Of(RectProblem problem, int seed, CancellationToken stop)
    {
        List<RectSheet> sheets = [];
        RectProblem rest = problem;
        while (Next(rest, seed, stop) is RectSheet sheet)
        {
            sheets.Add(sheet);
            rest = Without(rest, sheet);
        }

        return (sheets, rest);
    }

    private static RectSheet? Next(RectProblem rest, int seed, CancellationToken stop)
    {
        (int stock, int repeats) = Cheapest(rest);
        if (stock < 0)
            return null;

        // The fullest sheet without repeats tells what is wanted; then from many repeats to few.
        RectSheet? fullest = Filled(rest, stock, 1, seed, stop);
        if (fullest is null)
            return null;

        long enough = Area(fullest) - (long)(Slack * rest.Stocks[stock].Area);
        for (; repeats > 1; repeats /= 2)
            if (Filled(rest, stock, repeats, seed, stop) is RectSheet sheet && Area(sheet) >= enough)
                return sheet;
        return fullest;
    }

    private static bool IsAlone(RectPiece piece) => piece.Group < 0;

    private static long Area(RectSheet sheet) => sheet.Spots.Sum(s => s.Place.Area);

    // The stock that costs least by area and of which several are needed.
    private static (int Stock, int Repeats) Cheapest(RectProblem rest)
    {
        double area = rest.Pieces.Where(IsAlone).Sum(p => (double)p.Area * p.Copies);
        (int found, double least, int repeats) = (-1, double.PositiveInfinity, 0);
        for (int s = 0; s < rest.Stocks.Count; s++)
        {
            RectStock stock = rest.Stocks[s];
            int sheets = (int)Math.Min(Math.Floor(area / stock.Area), stock.Copies ?? int.MaxValue);
            if (sheets >= SheetsLeft && stock.KeepOuts.Count == 0 && stock.Cost / stock.Area < least)
                (found, least, repeats) = (s, stock.Cost / stock.Area, sheets);
        }

        return (found, repeats);
    }

    private static RectSheet? Filled(RectProblem rest, int stock, int repeats, int seed, CancellationToken stop)
    {
        int[] index = [.. Enumerable.Range(0, rest.Pieces.Count).Where(i => rest.Pieces[i].Copies >= repeats && IsAlone(rest.Pieces[i]))];
        RectProblem one = rest with
        {
            Stocks = [rest.Stocks[stock] with { Copies = 1 }],
            Pieces = [.. index.Select(i => rest.Pieces[i] with { Copies = Most(rest.Pieces[i], rest.Stocks[stock], repeats) })],
        };
        CutJob job = new(one, seed);
        CutWalk walk = new(job, seed);
        walk.Start();
        walk.Go(long.MaxValue, Steps, stop);
        return CutWriter.Write(walk.Best, job).Sheets is [RectSheet sheet]
            ? sheet with { Stock = stock, Repeats = repeats, Spots = [.. sheet.Spots.Select(s => s with { Piece = index[s.Piece] })] }
            : null;
    }

    // No more copies than repeats leave and than a sheet takes by area.
    private static int Most(RectPiece piece, RectStock stock, int repeats) => (int)Math.Min(piece.Copies / repeats, Math.Max(1, stock.Area / piece.Area));

    private static RectProblem Without(RectProblem rest, RectSheet sheet)
    {
        int[] used = new int[rest.Pieces.Count];
        foreach (RectSpot spot in sheet.Spots)
            used[spot.Piece] += sheet.Repeats;
        return rest with
        {
            Stocks = [.. rest.Stocks.Select((s, i) => i == sheet.Stock && s.Copies is int n ? s with { Copies = n - sheet.Repeats } : s)],
            Pieces = [.. rest.Pieces.Select((p, i) => p with { Copies = p.Copies - used[i] })],
        };
    }
}
