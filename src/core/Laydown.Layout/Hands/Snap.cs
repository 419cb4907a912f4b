using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>Lays a piece that was let go near its neighbours exactly at the gap, or at the margin of the sheet.</summary>
internal static class Snap
{
    /// <summary>The spot shifted by at most <paramref name="reachMm"/> each way to where it touches what it must keep clear of or lies flush with a neighbour.</summary>
    /// <remarks>Of all such places without a conflict the nearest; the spot as it is where there is none.</remarks>
    internal static HandSpot Of(HandSheet sheet, int without, HandSpot spot, double reachMm, HandRules rules)
    {
        if (rules.Contours is not null)
            return ContourSnap.Of(sheet, without, spot, reachMm, rules);
        if (reachMm <= 0)
            return spot;
        RectMm here = rules.PlaceOf(spot), printable = rules.Printable;
        RectMm[] others = [.. sheet.Spots.Where((_, i) => i != without).Select(rules.PlaceOf).Where(p => p.Grown(rules.GapMm + reachMm + 1).Overlaps(here.Grown(reachMm)))];
        double?[] xs = Near(
            [printable.XMm, printable.RightMm - here.WidthMm, .. others.SelectMany(o => new[] { o.RightMm + rules.GapMm, o.XMm - rules.GapMm - here.WidthMm, o.XMm, o.RightMm - here.WidthMm })],
            here.XMm, reachMm);
        double?[] ys = Near(
            [printable.YMm, printable.TopMm - here.HeightMm, .. others.SelectMany(o => new[] { o.TopMm + rules.GapMm, o.YMm - rules.GapMm - here.HeightMm, o.YMm, o.TopMm - here.HeightMm })],
            here.YMm, reachMm);

        // Drawn along both axes where that goes, else along one.
        foreach ((double? x, double? y) in xs.SelectMany(x => ys.Select(y => (x, y)))
            .OrderBy(p => (p.x is null ? 1 : 0) + (p.y is null ? 1 : 0))
            .ThenBy(p => Math.Abs((p.x ?? here.XMm) - here.XMm) + Math.Abs((p.y ?? here.YMm) - here.YMm)))
        {
            HandSpot tried = spot with { XMm = Math.Round(x ?? spot.XMm, 3), YMm = Math.Round(y ?? spot.YMm, 3) };
            if (IsClear(rules.PlaceOf(tried), others, rules))
                return tried;
        }

        return spot;
    }

    private static double?[] Near(IEnumerable<double> wanted, double here, double reach) =>
        [.. wanted.Where(w => Math.Abs(w - here) <= reach).OrderBy(w => Math.Abs(w - here)).Distinct().Take(4).Select(w => (double?)w), null];

    private static bool IsClear(RectMm place, RectMm[] others, HandRules rules) =>
        rules.Printable.Holds(place, 0.0015)
        && !others.Any(o => o.Grown(rules.GapMm).Overlaps(place, 0.0015))
        && !rules.KeepOuts.Any(k => k.Grown(rules.GapMm).Overlaps(place, 0.0015));
}
