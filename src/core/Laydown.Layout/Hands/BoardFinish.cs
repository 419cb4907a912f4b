using Laydown.Layout.Boards;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>Finishes boards of rectangles by the search that lays boards out in the first place, begun with what is locked.</summary>
internal static class BoardFinish
{
    /// <summary>Whether that search can begin here.</summary>
    /// <remarks>It builds on sheets that are sound and, where a saw cuts, on locked pieces that come apart; and it knows no rolls.</remarks>
    internal static bool Takes(IReadOnlyList<HandSheet> kept, HandRules rules) =>
        !rules.IsRoll && rules.Contours is null
        && HandSheets.Missing(kept, rules).All(m => m >= 0) && kept.All(s => LayoutConflicts.OnSheet(s, 0, rules).Count == 0);

    /// <summary>The best found.</summary>
    internal static IReadOnlyList<HandSheet> Solve(
        IReadOnlyList<HandSheet> kept, HandRules rules, SearchRules search, Action<IReadOnlyList<HandSheet>>? better, CancellationToken stop)
    {
        // That search keeps the gap before a place kept out; behind it, the place is taken as wider by the gap.
        RectMm[] outs = [.. rules.KeepOuts.Select(k => new RectMm(k.XMm, k.YMm, k.WidthMm + rules.GapMm, k.HeightMm + rules.GapMm))];
        BoardRules boards = new(
            rules.Sheet, rules.EdgeMarginMm, rules.GapMm, rules.Process, OffcutLeastSideMm: rules.OffcutLeastSideMm,
            Stocks: [new("", rules.Sheet, null, 1, rules.EdgeMarginMm, outs)]);
        IReadOnlyList<SheetLayout> started = [.. HandSheets.Layouts(kept, rules).Select(s => s with { StockId = "", KeepOuts = outs })];
        Action<LayoutResult>? told = better is null ? null : found => better(HandSheets.From(found.Sheets));
        return HandSheets.From(BoardLayout.Solve(rules.Pieces, boards, started, search, told, stop).Sheets);
    }
}
