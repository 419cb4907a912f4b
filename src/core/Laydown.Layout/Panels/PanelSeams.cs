using Laydown.Measures;

namespace Laydown.Layout.Panels;

/// <summary>Finds the seams of panels from where they lie.</summary>
internal static class PanelSeams
{
    private const double Slack = 1e-6;

    /// <summary>Level seams within columns and upright seams between neighbours, in the order in which hanging makes them.</summary>
    internal static IReadOnlyList<PanelSeam> Of(IReadOnlyList<Panel> panels)
    {
        List<PanelSeam> seams = [];
        foreach (Panel one in panels)
        {
            foreach (Panel other in panels)
            {
                if (other.Column == one.Column && other.Row == one.Row + 1)
                    seams.Add(Level(one, other));
                else if (other.Column == one.Column + 1 && Beside(one, other, panels))
                    seams.Add(Upright(one, other));
            }
        }

        return [.. seams.OrderBy(s => s.Over).ThenBy(s => s.Under)];
    }

    private static PanelSeam Level(Panel lower, Panel upper)
    {
        double left = Math.Max(lower.Part.XMm, upper.Part.XMm), right = Math.Min(lower.Part.RightMm, upper.Part.RightMm);
        double from = Math.Min(lower.Part.TopMm, upper.Part.YMm), to = Math.Max(lower.Part.TopMm, upper.Part.YMm);
        return Seam(lower, upper, false, lower.Part.TopMm - upper.Part.YMm, new(left, from, right - left, to - from));
    }

    private static PanelSeam Upright(Panel left, Panel right)
    {
        double low = Math.Max(left.Part.YMm, right.Part.YMm), high = Math.Min(left.Part.TopMm, right.Part.TopMm);
        double from = Math.Min(left.Part.RightMm, right.Part.XMm), to = Math.Max(left.Part.RightMm, right.Part.XMm);
        return Seam(left, right, true, left.Part.RightMm - right.Part.XMm, new(from, low, to - from, high - low));
    }

    private static PanelSeam Seam(Panel one, Panel other, bool upright, double overlap, RectMm zone) =>
        new(Math.Min(one.Number, other.Number), Math.Max(one.Number, other.Number), upright, overlap, zone);

    // Panels of two rows share the height of a level overlap alone: they are no neighbours.
    private static bool Beside(Panel left, Panel right, IReadOnlyList<Panel> panels)
    {
        double shared = Math.Min(left.Part.TopMm, right.Part.TopMm) - Math.Max(left.Part.YMm, right.Part.YMm);
        return shared > Math.Max(OverlapOf(left, panels), OverlapOf(right, panels)) + Slack;
    }

    private static double OverlapOf(Panel panel, IReadOnlyList<Panel> panels) => panels
        .Where(p => p.Column == panel.Column && Math.Abs(p.Row - panel.Row) == 1)
        .Select(p => p.Row > panel.Row ? panel.Part.TopMm - p.Part.YMm : p.Part.TopMm - panel.Part.YMm)
        .DefaultIfEmpty(0).Max();
}
