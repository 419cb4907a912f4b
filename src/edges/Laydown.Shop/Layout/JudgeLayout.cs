using Laydown.Layout.Hands;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Runs;

namespace Laydown.Shop.Layout;

/// <summary>Judges a layout of a run: conflicts, fill, cuts, offcuts, cost.</summary>
/// <param name="request">Makes the request a run is planned from.</param>
public sealed class JudgeLayout(RunRequests request)
{
    /// <summary>All that is to be said of a layout. Pure.</summary>
    /// <param name="opened">The run it belongs to.</param>
    /// <param name="sheets">The layout; its pieces are the run's.</param>
    /// <param name="measured">The run's items with their ink; null where it is not measured yet.</param>
    public LayoutReport Judge(OpenedLayout opened, IReadOnlyList<HandSheet> sheets, IReadOnlyList<PlannedItem>? measured)
    {
        ArgumentNullException.ThrowIfNull(opened);
        ArgumentNullException.ThrowIfNull(sheets);
        HandRules rules = opened.Rules;
        IReadOnlyList<SheetLayout> layouts = opened.LayoutsOf(sheets);
        IReadOnlyList<LayoutConflict> conflicts = LayoutConflicts.Of(sheets, rules);
        bool stopped = conflicts.Any(c => c.Severity == Severity.Stop);
        double area = layouts.Sum(l => l.Repeats * l.Sheet.AreaM2), used = layouts.Sum(l => l.Repeats * l.FillPercent * l.Sheet.AreaM2);
        RectMm[] offcuts = [.. layouts.SelectMany(l => l.Offcuts).OrderByDescending(o => o.Size.AreaM2).Take(1)];
        return new(
            [.. sheets.Select((s, i) => Sheet(s, layouts[i], i, conflicts, opened))],
            [.. conflicts.Select((c, i) => new JudgedConflict(i + 1, c.Kind, c.Severity, c.Sheet, c.Spots, c.Where, c.Words(NamesOf(c, layouts, opened)) + opened.Rooms.Words(c, layouts.ElementAtOrDefault(c.Sheet))))],
            [.. HandSheets.Missing(sheets, rules).Select((m, i) => new MissingCopies(rules.Pieces[i].Id, opened.Names[rules.Pieces[i].Id], m)).Where(m => m.Copies > 0)],
            layouts.Where(l => l.Placements.Count > 0).Sum(l => l.Repeats),
            rules.IsRoll ? layouts.Sum(l => l.Sheet.HeightMm) / 1000 : null,
            area > 0 ? used / area : 0,
            offcuts.Length > 0 ? offcuts[0].Size.ToString() : null,
            sheets.Sum(s => s.Spots.Count(p => p.Locked)),
            sheets.Sum(s => s.Spots.Count),
            measured is null || stopped ? null : request.CostOf(opened, [.. layouts.Where(l => l.Placements.Count > 0)], measured),
            !stopped && opened.Closed is null);
    }

    private static JudgedSheet Sheet(HandSheet sheet, SheetLayout layout, int index, IReadOnlyList<LayoutConflict> conflicts, OpenedLayout opened)
    {
        bool saw = opened.Rules.Process == CutProcess.Guillotine && !conflicts.Any(c => c.Sheet == index && c.Severity == Severity.Stop);
        SawCuts cuts = saw ? SawCuts.Of(sheet, opened.Rules) : new([], [], 0);
        return new(
            layout.Sheet, layout.Repeats, layout.FillPercent,
            [.. layout.Placements.Select(p => PieceRoom.Grown(p, opened.Rooms.Of(p.PieceId))).Select(p => new JudgedSpot(
                p.PieceId, opened.Names[p.PieceId], p.Copy, p.Place.XMm, p.Place.YMm, p.Place.WidthMm, p.Place.HeightMm, 90 * p.QuarterTurns, p.Locked))],
            layout.Offcuts, cuts.Cuts, cuts.Stages);
    }

    private static IReadOnlyList<string> NamesOf(LayoutConflict conflict, IReadOnlyList<SheetLayout> layouts, OpenedLayout opened) => conflict.PieceId is { } id
        ? [opened.Names[id]]
        : [.. conflict.Spots.Take(2).Select(s => layouts[conflict.Sheet].Placements[s]).Select(p => Invariant($"{opened.Names[p.PieceId]} · {p.Copy}"))];
}
