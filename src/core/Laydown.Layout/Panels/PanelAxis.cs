using Laydown.Measures;

namespace Laydown.Layout.Panels;

/// <summary>One axis of a request, in whole millimetres.</summary>
/// <param name="request">The request.</param>
/// <param name="upright">Whether seams run upright: the axis is level, from the left; else it goes up from below.</param>
/// <param name="mostMm">Longest panel along it, mm.</param>
/// <param name="given">Whether given widths are those along this axis.</param>
internal sealed class PanelAxis(PanelRequest request, bool upright, double mostMm, bool given)
{
    private const double Slack = 1e-6;

    private readonly int length = (int)Math.Ceiling((upright ? request.Graphic.WidthMm : request.Graphic.HeightMm) - Slack);

    /// <summary>The best panels, or null where no seams can lie so.</summary>
    /// <param name="across">Only places kept out that reach into this stretch of the other axis count, mm of the graphic.</param>
    /// <param name="clearOf">Steps that seams must stay out of, besides.</param>
    internal AxisAnswer? Solve((double From, double To) across, IReadOnlyList<(int From, int To)> clearOf)
    {
        PanelWish wish = request.Wish;
        int overlapLeast = (int)Math.Round(wish.OverlapLeastMm), overlapMost = (int)Math.Round(wish.OverlapMostMm);
        int least = Math.Max(1, Math.Max((int)Math.Ceiling(wish.LeastWidthMm - Slack), 2 * overlapMost));
        PanelWidths widths = wish.Widths == PanelWidths.Given && !given ? PanelWidths.Equal : wish.Widths;
        int most = (int)Math.Min(length, Math.Floor(mostMm + Slack));
        if (most < 1)
            return null;
        return AxisSplit.Solve(
            new(length, most, Math.Min(least, length), overlapLeast, overlapMost, widths, [.. (wish.GivenMm ?? []).Select(g => (int)Math.Round(g))]),
            Profile(across, clearOf));
    }

    /// <summary>From and to of a panel of an answer, mm of the graphic.</summary>
    internal (double From, double To) Of(AxisAnswer answer, int panel) =>
        (answer.Starts[panel], Math.Min(answer.Ends[panel], upright ? request.Graphic.WidthMm : request.Graphic.HeightMm));

    private SeamProfile Profile((double From, double To) across, IReadOnlyList<(int From, int To)> clearOf)
    {
        int[] cost = new int[length];
        foreach (SeamKeepOut place in request.KeepOuts)
        {
            RectMm at = place.Place with { XMm = place.Place.XMm + request.BleedMm, YMm = place.Place.YMm + request.BleedMm };
            (double from, double to, double low, double high) = upright ? (at.XMm, at.RightMm, at.YMm, at.TopMm) : (at.YMm, at.TopMm, at.XMm, at.RightMm);
            if (high > across.From && low < across.To)
                Add(cost, (int)Math.Floor(Math.Clamp(from, 0, length)), (int)Math.Ceiling(Math.Clamp(to, 0, length)), place.Never ? -1 : place.CostPerMm);
        }

        foreach ((int from, int to) in clearOf)
            Add(cost, Math.Clamp(from, 0, length), Math.Clamp(to, 0, length), -1);
        return new(cost, Wanted(), request.Wish.SeamsOnlyThere, request.Wish.ElsewhereCost);
    }

    private bool[]? Wanted()
    {
        IReadOnlyList<double> wanted = (upright ? request.Wish.SeamsAtMm : request.Wish.LevelSeamsAtMm) ?? [];
        if (wanted.Count == 0)
            return null;
        bool[] near = new bool[(2 * length) + 1];
        for (int twice = 0; twice < near.Length; twice++)
            near[twice] = wanted.Any(w => Math.Abs((twice / 2.0) - w - request.BleedMm) <= request.Wish.SeamSlackMm + Slack);
        return near;
    }

    private static void Add(int[] cost, int from, int to, int each)
    {
        for (int i = from; i < to; i++)
            cost[i] = each < 0 || cost[i] < 0 ? -1 : (int)Math.Min(int.MaxValue, (long)cost[i] + each);
    }
}
