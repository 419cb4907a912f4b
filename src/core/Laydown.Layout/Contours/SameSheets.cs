namespace Laydown.Layout.Contours;

/// <summary>Boards that carry the same pieces at the same places: one layout, printed several times.</summary>
public static class SameSheets
{
    /// <summary>Numbers of the sheets of each layout, in the order of the first of each.</summary>
    public static IReadOnlyList<IReadOnlyList<int>> Of(IReadOnlyList<ContourSheet> sheets)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        return [.. Enumerable.Range(0, sheets.Count).GroupBy(i => Key(sheets[i]), StringComparer.Ordinal).Select(g => (IReadOnlyList<int>)[.. g])];
    }

    /// <summary>Each layout once, with how often it comes.</summary>
    public static IReadOnlyList<(ContourSheet Sheet, int Repeats)> Merged(IReadOnlyList<ContourSheet> sheets) =>
        [.. Of(sheets).Select(g => (sheets[g[0]], g.Count))];

    /// <summary>The sheets of the layout that fills its board least; of equals the one that comes least often, then the later.</summary>
    internal static IReadOnlyList<int> Emptiest(ContourProblem problem, IReadOnlyList<ContourSheet> sheets)
    {
        Dictionary<string, double> areas = problem.Pieces.ToDictionary(p => p.Id, p => p.Area.AreaMm2, StringComparer.Ordinal);
        Dictionary<string, double> boards = problem.Stocks.ToDictionary(s => s.Id, s => s.Area.AreaMm2, StringComparer.Ordinal);
        double Fill(ContourSheet sheet) => sheet.Spots.Sum(s => areas[s.PieceId]) / (sheet.StockId is { } id ? boards[id] : 1);
        return Of(sheets).MinBy(g => (Math.Round(Fill(sheets[g[0]]), 9), g.Count, -g[0]))!;
    }

    private static string Key(ContourSheet sheet) => sheet.StockId + ":" + string.Join(';', sheet.Spots.OrderBy(p => p.YMm).ThenBy(p => p.XMm)
        .Select(p => Invariant($"{p.PieceId},{p.XMm:R},{p.YMm:R},{p.AngleDegrees:R}")));
}
