using Laydown.Layout.Packing;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>What is left of a sheet that was laid out by hand.</summary>
public static class BareRests
{
    /// <summary>Usable rectangles left over, largest first, as the cut frees them; none of a roll, and none where a saw cannot take the sheet apart.</summary>
    /// <exception cref="ArgumentException">A piece is none of the rules'.</exception>
    public static IReadOnlyList<RectMm> Of(HandSheet sheet, HandRules rules)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(rules);
        if (rules.IsRoll || sheet.Spots.Count == 0)
            return [];
        if (rules.Contours is not null)
            return BeyondAll(sheet, rules);
        GrownSheet grown = GrownSheet.Of(rules);
        int leastSide = Micro.Up(rules.OffcutLeastSideMm + rules.GapMm);
        IEnumerable<Box> bare = rules.Process == CutProcess.Guillotine && rules.KeepOuts.Count == 0
            ? SawCuts.TreeOf(sheet, grown) is { Stuck.Count: 0 } tree ? tree.Bare.Where(b => Math.Min(b.W, b.H) >= leastSide) : []
            : AtEdges(sheet, grown).Leftovers(leastSide);
        return [.. bare.OrderByDescending(b => b.Area).ThenBy(b => b.Y).ThenBy(b => b.X).Select(b => grown.Offcut(b, rules.Sheet))];
    }

    // Among contours only what lies beyond all of them at the right-hand or the upper edge comes off with one straight cut.
    private static IReadOnlyList<RectMm> BeyondAll(HandSheet sheet, HandRules rules)
    {
        RectMm[] boxes = [.. sheet.Spots.Select(s => rules.LyingOf(s).Box)];
        double right = boxes.Max(b => b.RightMm), top = boxes.Max(b => b.TopMm);
        RectMm[] rests = [new(right, 0, Math.Max(0, rules.Sheet.WidthMm - right), rules.Sheet.HeightMm), new(0, top, rules.Sheet.WidthMm, Math.Max(0, rules.Sheet.HeightMm - top))];
        return [.. rests.Where(r => Math.Min(r.WidthMm, r.HeightMm) >= rules.OffcutLeastSideMm).OrderByDescending(r => r.Size.AreaM2).Take(1)];
    }

    /// <summary>The bare area around what lies on a sheet, as rectangles that cannot grow.</summary>
    internal static MaximalRectangles AtEdges(HandSheet sheet, GrownSheet grown, Fit fit = Fit.Low)
    {
        MaximalRectangles bare = new(grown.Area.W, grown.Area.H, fit);
        foreach (HandSpot spot in sheet.Spots)
            bare.Cover(grown.Grown(grown.Rules.PlaceOf(spot)));
        foreach (RectMm place in grown.Rules.KeepOuts)
            bare.Cover(grown.KeptOut(place));
        return bare;
    }
}
