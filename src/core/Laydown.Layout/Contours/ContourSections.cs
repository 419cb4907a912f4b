using Laydown.Geometry.Shapes;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>Contours on one length of roll, cut across into sections where one alone would be too long: filled like boards of that length, then each pushed together.</summary>
/// <param name="strip">The roll.</param>
/// <param name="gapMm">Least distance between two pieces, mm; a cut goes through the middle of it.</param>
/// <param name="bounds">Bounds of a section.</param>
internal sealed class ContourSections(ContourStrip strip, double gapMm, SectionBounds bounds)
{
    /// <summary>Most pieces of a section that is pushed together, and how much is searched for it: pieces times sweeps, and sweeps.</summary>
    private const int MostPieces = 300, MostWork = 12_000, MostSweeps = 400;

    /// <summary>The roll, and copies without a place.</summary>
    /// <param name="pieces">What is to lie on it; none for a bare roll.</param>
    /// <param name="rules">Chance, iterations, workers.</param>
    /// <param name="stop">Ends the search.</param>
    internal (ContourLength Length, IReadOnlyList<UnplacedPiece> Unplaced) Laid(IReadOnlyList<ContourPiece> pieces, SearchRules rules, CancellationToken stop)
    {
        if (pieces.Count == 0)
            return (new([], [], 0), []);
        double bare = pieces.Sum(p => p.Copies * p.Area.AreaMm2) / (strip.WidthMm - (2 * strip.EdgeMarginMm));
        if (bounds.LongestMm <= 0 || bare <= bounds.LongestMm)
        {
            ContourResult whole = ContourLayout.Solve(ContourProblem.On(strip, gapMm, pieces), rules, null, stop);
            if (bounds.LongestMm <= 0 || Net(whole) <= bounds.LongestMm + 1e-6)
                return (whole.Sheets.Count == 0 ? new([], [], 0) : Chained([(whole.Sheets[0].Spots, Net(whole))]), whole.Unplaced);
        }

        ContourStock section = new("section", Shape.Of(new RectMm(0, 0, bounds.LongestMm + (2 * strip.EdgeMarginMm), strip.WidthMm)), null, 1, strip.EdgeMarginMm);
        ContourResult cut = ContourLayout.Solve(ContourProblem.On([section], gapMm, pieces), rules, null, stop);
        List<(IReadOnlyList<ContourSpot> Spots, double NetMm)> sections = [];
        foreach ((ContourSheet sheet, int repeats) in SameSheets.Merged(cut.Sheets))
            sections.AddRange(Enumerable.Repeat(Pushed(sheet.Spots, pieces, rules), repeats));
        return (Chained([.. sections.OrderByDescending(s => s.NetMm)]), cut.Unplaced);
    }

    private double Net(ContourResult result) => result.LengthMm - (2 * strip.EdgeMarginMm);

    // One section as short as a short search finds, with the pieces it has.
    private (IReadOnlyList<ContourSpot> Spots, double NetMm) Pushed(IReadOnlyList<ContourSpot> spots, IReadOnlyList<ContourPiece> pieces, SearchRules rules)
    {
        Dictionary<string, int> counts = spots.CountBy(s => s.PieceId, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
        ContourPiece[] own = [.. pieces.Where(p => counts.ContainsKey(p.Id)).Select(p => p with { Copies = counts[p.Id] })];
        Dictionary<string, ContourPiece> byId = own.ToDictionary(p => p.Id, StringComparer.Ordinal);
        double before = spots.Max(s => PieceBox.Of(byId[s.PieceId], s).RightMm) - strip.EdgeMarginMm;
        if (spots.Count > MostPieces)
            return (spots, before);
        long sweeps = Math.Min(rules.Iterations, Math.Min(MostSweeps, MostWork / spots.Count));
        ContourResult pushed = ContourLayout.Solve(ContourProblem.On(strip, gapMm, own), rules with { Iterations = sweeps, Workers = 1 }, null, CancellationToken.None);
        return pushed.IsWhole && Net(pushed) < before ? (pushed.Sheets[0].Spots, Net(pushed)) : (spots, before);
    }

    private ContourLength Chained(IReadOnlyList<(IReadOnlyList<ContourSpot> Spots, double NetMm)> sections)
    {
        List<ContourSpot> spots = [];
        List<double> cuts = [];
        double from = 0;
        foreach ((IReadOnlyList<ContourSpot> section, double net) in sections)
        {
            if (from > 0)
                cuts.Add(from + strip.EdgeMarginMm - (gapMm / 2));
            spots.AddRange(section.Select(s => s with { XMm = s.XMm + from }));
            from += Math.Max(net, bounds.LeastMm) + gapMm;
        }

        return sections.Count == 0 ? new([], [], 0) : new(spots, cuts, from - gapMm + (2 * strip.EdgeMarginMm));
    }
}
