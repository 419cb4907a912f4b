using Laydown.Measures;

namespace Laydown.Plan.Log;

/// <summary>Figures of the shop over a time, each with its parts: availability × performance × quality, yield of material, share on time. [Nakajima1988], from memory.</summary>
public static class ShopFigures
{
    private const string Product = "Nakajima1988";

    /// <summary>The figures that can be told; one that lacks its data is left out.</summary>
    /// <param name="actuals">Runs done in the time.</param>
    /// <param name="remakes">Remakes in it.</param>
    /// <param name="hours">How long the presses were to be worked and ran, all together; null where the shop keeps no calendar.</param>
    public static IReadOnlyList<Figure> Of(IReadOnlyList<RunActual> actuals, IReadOnlyList<RemakeNote> remakes, PressHours? hours)
    {
        List<Figure> figures = [];
        if (actuals.Count == 0)
            return figures;
        double minutes = actuals.Sum(a => a.Minutes), estimated = actuals.Sum(a => a.EstimatedMinutes);
        long good = actuals.Sum(a => (long)a.Good), made = actuals.Sum(a => (long)a.Made);
        Figure performance = Percent("performance", estimated, minutes, Invariant($"{estimated:0} min estimated of {minutes:0} min taken by {actuals.Count} runs"), Product);
        Figure quality = Percent("quality", good, made, Invariant($"{good} good of {made} sheets made"), Product);
        if (hours is { OpenMinutes: > 0 })
        {
            Figure availability = Percent("availability", hours.RunMinutes, hours.OpenMinutes, hours.Words, Product);
            double together = availability.Value * performance.Value * quality.Value / 1e4;
            figures.Add(new("use of the presses", together, "%",
                Invariant($"availability {availability.Value:0.0} % × performance {performance.Value:0.0} % × quality {quality.Value:0.0} %"), Product));
            figures.Add(availability);
        }

        figures.AddRange([performance, quality]);
        double used = actuals.Sum(a => a.SheetM2 * a.Made), sold = actuals.Sum(a => a.PieceM2 * a.Good);
        if (used > 0)
            figures.Add(Percent("material yield", sold, used, Invariant($"{sold:0.0} m² of good pieces, bleed included, of {used:0.0} m² of sheets"), "common practice, no source"));
        int inTime = actuals.Count(a => a.OnTime);
        figures.Add(Percent("runs on time", inTime, actuals.Count, Invariant($"{inTime} of {actuals.Count} runs done on their day or before"), "common practice, no source"));
        var cost = Money.Sum(remakes.Select(r => r.Cost));
        figures.Add(new("cost of remakes", (double)cost.Units, "", Invariant($"sum of {remakes.Count} remakes"), "common practice, no source"));
        return figures;
    }

    private static Figure Percent(string name, double part, double whole, string because, string source) =>
        new(name, whole > 0 ? 100 * part / whole : 0, "%", because, source);
}
