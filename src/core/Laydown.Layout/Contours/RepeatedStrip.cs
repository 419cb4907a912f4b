using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Contours;

/// <summary>Many copies on a strip: a stretch with an even share of each piece is searched and comes again and again; what is left over follows.</summary>
internal static class RepeatedStrip
{
    /// <summary>About so many copies lie on a stretch.</summary>
    private const int OfStretch = 150;

    /// <summary>All copies on the strip.</summary>
    internal static ContourResult Solve(ContourProblem problem, SearchRules rules, CancellationToken stop)
    {
        long all = problem.Pieces.Sum(p => (long)p.Copies);
        int times = (int)Math.Max(1, (all + OfStretch - 1) / OfStretch);
        ContourPiece[] share = [.. problem.Pieces.Where(p => p.Copies >= times).Select(p => p with { Copies = p.Copies / times })];
        ContourPiece[] over = [.. problem.Pieces.Select(p => p with { Copies = p.Copies >= times ? p.Copies % times : p.Copies }).Where(p => p.Copies > 0)];
        SearchRules half = rules with { Iterations = rules.Iterations == long.MaxValue ? rules.Iterations : rules.Iterations / 2 };
        ContourResult? stretch = share.Length > 0 ? Searched(problem with { Pieces = share }, half, stop) : null;
        ContourResult? rest = over.Length > 0 ? Searched(problem with { Pieces = over }, rules with { Iterations = rules.Iterations - (stretch is null ? 0 : half.Iterations) }, stop) : null;
        return Joined(problem, stretch, times, rest);
    }

    private static ContourResult Searched(ContourProblem problem, SearchRules rules, CancellationToken stop)
    {
        BestKept kept = new(null);
        kept.Offer(BoxFill.Fill(problem));
        if (problem.Pieces.Sum(p => (long)p.Copies) <= ContourLayout.MostSearched && !stop.IsCancellationRequested)
            kept.Offer(ContourLayout.Searched(problem, rules, null, stop));
        return kept.Best!;
    }

    // Stretch after stretch, a gap apart; copies are numbered on.
    private static ContourResult Joined(ContourProblem problem, ContourResult? stretch, int times, ContourResult? rest)
    {
        ContourStrip strip = problem.Strip!;
        Dictionary<string, int> copies = new(StringComparer.Ordinal);
        List<ContourSpot> spots = [];
        double from = 0;
        IEnumerable<ContourResult> parts = Enumerable.Repeat(stretch, times).Append(rest).OfType<ContourResult>();
        foreach (ContourResult part in parts.Where(p => p.Sheets.Count > 0))
        {
            spots.AddRange(part.Sheets[0].Spots.Select(s => s with { XMm = s.XMm + from, Copy = copies[s.PieceId] = copies.GetValueOrDefault(s.PieceId) + 1 }));
            from += part.LengthMm - (2 * strip.EdgeMarginMm) + problem.GapMm;
        }

        UnplacedPiece[] unplaced = [.. parts.SelectMany(p => p.Unplaced).GroupBy(u => u.PieceId, StringComparer.Ordinal).Select(g => g.First() with { Copies = g.Sum(u => u.Copies) })];
        if (spots.Count == 0)
            return new([], 0, 0, 0, unplaced);
        double length = from - problem.GapMm + (2 * strip.EdgeMarginMm);
        Dictionary<string, double> areas = problem.Pieces.ToDictionary(p => p.Id, p => p.Area.AreaMm2, StringComparer.Ordinal);
        return new([new(null, spots)], length, 0, spots.Sum(s => areas[s.PieceId]) / (strip.WidthMm * length), unplaced);
    }
}
