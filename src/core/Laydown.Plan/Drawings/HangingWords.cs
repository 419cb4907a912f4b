using Laydown.Layout.Panels;

namespace Laydown.Plan.Drawings;

/// <summary>A hanging plan in words: the same in drawing, paper and page.</summary>
public static class HangingWords
{
    /// <summary>The order of hanging in one line.</summary>
    public static string Order(PanelPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        int columns = plan.Panels.Max(p => p.Column);
        bool fromRight = columns > 1 && plan.Panels[0].Column > plan.Panels[^1].Column;
        string rows = plan.Panels.Any(p => p.Row > 1) ? ", each column from the bottom up" : "";
        return columns == 1 ? "hang in the order of the numbers, from the bottom up" : Invariant($"hang in the order of the numbers, from the {(fromRight ? "right" : "left")}{rows}");
    }

    /// <summary>What the lines mean.</summary>
    public static string Legend(PanelPlan plan, double bleedMm)
    {
        ArgumentNullException.ThrowIfNull(plan);
        string seams = plan.Seams.Any(s => s.OverlapMm > 0)
            ? "hatched: shown by both; strong line: edge that lies over"
            : plan.Seams.Any(s => s.OverlapMm < 0) ? "broken: gaps of the frames" : plan.SeamBleedMm > 0 ? Invariant($"panels butt: each is trimmed by {plan.SeamBleedMm:0.##} mm at its seams first") : "panels butt";
        return Invariant($"{seams} · mm from {(bleedMm > 0 ? "the finished edge (broken)" : "the edge of the print")}");
    }

    /// <summary>One line for each step of hanging.</summary>
    public static IReadOnlyList<string> Steps(PanelPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return [.. plan.Panels.Select(p => Step(plan, p))];
    }

    /// <summary>All of it in sentences, for those who do not see the drawing.</summary>
    public static string Describe(PanelPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Invariant($"Graphic {plan.Graphic} in {plan.Panels.Count} panels; {Order(plan)}. ") + string.Join(" ", Steps(plan).Take(60));
    }

    private static string Step(PanelPlan plan, Panel panel)
    {
        List<string> seams = [.. plan.Seams.Where(s => s.Over == panel.Number).Select(s => s.OverlapMm switch
        {
            > 0 => Invariant($"over {s.Under} by {s.OverlapMm:0.#} mm"),
            < 0 => Invariant($"{-s.OverlapMm:0.#} mm off {s.Under}"),
            _ => Invariant($"butting {s.Under}"),
        })];
        string where = Invariant($"{panel.Part.XMm:0.#} mm from the left and {panel.Part.YMm:0.#} mm from below");
        return Invariant($"Panel {panel.Number}, {panel.Part.Size}, {where}{(seams.Count > 0 ? ", " : "")}{string.Join(", ", seams)}.");
    }
}
