using Laydown.Measures;

namespace Laydown.Layout.Panels;

/// <summary>What is wrong with a request for panels, in words a person can act on.</summary>
internal static class PanelFaults
{
    private const double MostSideMm = 100_000;

    /// <summary>The first thing that cannot be taken, or null.</summary>
    internal static InputFault? Of(PanelRequest request)
    {
        PanelWish wish = request.Wish;
        SizeMm graphic = request.Graphic;
        if (!(graphic.WidthMm > 0 && graphic.HeightMm > 0 && graphic.WidthMm <= MostSideMm && graphic.HeightMm <= MostSideMm))
            return Fault(request, "size", Invariant($"{graphic}"), "sides over 0 mm, up to 100 m");
        if (!IsWhole(wish.OverlapLeastMm, -1000, 1000) || !IsWhole(wish.OverlapMostMm, wish.OverlapLeastMm, 1000))
            return Fault(request, "overlapLeastMm, overlapMostMm", Invariant($"{wish.OverlapLeastMm} to {wish.OverlapMostMm} mm"), "whole mm from −1000 to 1000, the most not under the least");
        if (!(wish.SeamBleedMm is >= 0 and <= 50) || (wish.SeamBleedMm > 0 && (wish.OverlapLeastMm != 0 || wish.OverlapMostMm != 0)))
            return Fault(request, "seamBleedMm", Invariant($"{wish.SeamBleedMm} mm with overlaps of {wish.OverlapLeastMm} to {wish.OverlapMostMm} mm"), "0 to 50 mm, and over 0 only at butt joints, with an overlap of 0");
        if (!IsWhole(wish.LeastWidthMm, 1, MostSideMm))
            return Fault(request, "leastWidthMm", Invariant($"{wish.LeastWidthMm} mm"), "whole mm from 1 to 100 000");
        if (wish.Widths == PanelWidths.Given && (wish.GivenMm is not { Count: > 0 and <= AxisSplit.MostPanels } || wish.GivenMm.Any(g => !IsWhole(g, 1, MostSideMm))))
            return Fault(request, "givenMm", Invariant($"{wish.GivenMm?.Count ?? 0} widths"), Invariant($"1 to {AxisSplit.MostPanels} widths in whole mm, each over 0"));
        if (!(wish.SeamSlackMm is >= 0 and <= 1000) || !(wish.StaggerMm is >= 0 and <= 10_000) || wish.ElsewhereCost < 0)
            return Fault(request, "seamSlackMm, staggerMm, elsewhereCost", Invariant($"{wish.SeamSlackMm} mm, {wish.StaggerMm} mm, {wish.ElsewhereCost}"), "0 to 1000 mm, 0 to 10 000 mm, 0 or more");
        if ((wish.SeamsAtMm ?? []).Concat(wish.LevelSeamsAtMm ?? []).Any(s => !double.IsFinite(s)))
            return Fault(request, "seamsAtMm, levelSeamsAtMm", "a place that is no number", "mm from the edge of the finished piece");
        SeamKeepOut? wrong = request.KeepOuts.FirstOrDefault(k => k.CostPerMm is < 0 or > 1_000_000 || !IsPlace(k.Place));
        return wrong is null ? null : Fault(request, "keepOuts", Invariant($"{wrong.What ?? "a place"} that costs {wrong.CostPerMm} for each mm"), "a place in mm and a cost from 0 to 1 000 000");
    }

    /// <summary>No seams can lie as they must.</summary>
    internal static InputFault NoPlan(PanelRequest request)
    {
        SizeMm most = request.Most;
        string turn = request.MayTurn ? "may be turned" : "may not be turned";
        return Fault(request, "panels", Invariant($"{request.Graphic}, {turn}, {Words(request.Wish)}: no seams can lie so"), Invariant(
            $"panels of at most {most}: another pattern or width, or seams allowed nearer to text, codes and places kept out"));
    }

    private static string Words(PanelWish wish) => Invariant(
        $"{wish.Pattern.ToString().ToLowerInvariant()}, {wish.Widths.ToString().ToLowerInvariant()} widths of at least {wish.LeastWidthMm} mm, overlaps of {wish.OverlapLeastMm} to {wish.OverlapMostMm} mm");

    private static bool IsWhole(double value, double least, double most) => value >= least && value <= most && Math.Abs(value - Math.Round(value)) < 1e-6;

    private static bool IsPlace(RectMm place) =>
        double.IsFinite(place.XMm) && double.IsFinite(place.YMm) && place.WidthMm >= 0 && place.HeightMm >= 0 && double.IsFinite(place.RightMm) && double.IsFinite(place.TopMm);

    private static InputFault Fault(PanelRequest request, string field, string found, string wanted) => new(Invariant($"item {request.Id}"), null, field, found, wanted);
}
