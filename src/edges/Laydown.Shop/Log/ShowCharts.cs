using Laydown.Plan.Log;

namespace Laydown.Shop.Log;

/// <summary>Makes charts of what was measured.</summary>
/// <remarks>A difference of colour has one side and is skewed, so its parts are charted and ΔE is only held against a limit; common practice, no source.</remarks>
/// <param name="log">The log.</param>
public sealed class ShowCharts(ILogStore log)
{
    /// <summary>Most readings of a chart: the last ones.</summary>
    public const int MostReadings = 200;

    // So many colours are looked through for the readings of one patch.
    private const int MostColours = 4000;

    /// <summary>Charts of one figure over the last readings.</summary>
    /// <param name="of">What is charted.</param>
    /// <param name="span">Press and time.</param>
    /// <param name="patch">One patch of a colour; null for all together.</param>
    /// <param name="cancellation">Stops.</param>
    public Task<ShownCharts> ShowAsync(ChartedFigure of, LogSpan span, string? patch, CancellationToken cancellation) => of switch
    {
        ChartedFigure.Lightness => ColourAsync(of, "ΔL*", c => c.DeltaL, span, patch, cancellation),
        ChartedFigure.RedGreen => ColourAsync(of, "Δa*", c => c.DeltaA, span, patch, cancellation),
        ChartedFigure.YellowBlue => ColourAsync(of, "Δb*", c => c.DeltaB, span, patch, cancellation),
        ChartedFigure.Across => SinglesAsync(of, LogKind.Register, "Register across the feed", "mm", e => e.Register?.AcrossMm, span, cancellation),
        ChartedFigure.Along => SinglesAsync(of, LogKind.Register, "Register along the feed", "mm", e => e.Register?.AlongMm, span, cancellation),
        ChartedFigure.Thickness => ThicknessAsync(span, cancellation),
        _ => SpoiledAsync(span, cancellation),
    };

    private async Task<ShownCharts> ColourAsync(
        ChartedFigure of, string name, Func<ColourReading, double?> value, LogSpan span, string? patch, CancellationToken cancellation)
    {
        List<LogEntry> all = [.. (await log.LastAsync(LogKind.Colour, span, MostColours, cancellation)).Where(e => e.Colour is { } c && value(c) is not null)];
        List<string> patches = [.. all.Select(e => e.Colour!.Patch).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        List<LogEntry> entries = [.. all.Where(e => patch is null || string.Equals(e.Colour!.Patch, patch, StringComparison.Ordinal)).TakeLast(MostReadings)];
        ShownCharts shown = Singles(of, patch is null ? name : Invariant($"{name} of {patch}"), "", e => value(e.Colour!), span, entries);
        string note = patch is null && patches.Count > 1 ? Invariant($"{shown.Note} {patches.Count} patches lie in one chart, each with its own middle: choose one.") : shown.Note;
        return shown with { Patches = patches, Patch = patch, Note = note };
    }

    private async Task<ShownCharts> SinglesAsync(
        ChartedFigure of, LogKind kind, string name, string unit, Func<LogEntry, double?> value, LogSpan span, CancellationToken cancellation) =>
        Singles(of, name, unit, value, span, [.. (await log.LastAsync(kind, span, MostReadings, cancellation)).Where(e => value(e) is not null)]);

    private static ShownCharts Singles(ChartedFigure of, string name, string unit, Func<LogEntry, double?> value, LogSpan span, List<LogEntry> entries)
    {
        if (entries.Count < ControlCharts.FewestPoints)
            return Few(of, span, entries.Count);
        (ControlChart values, ControlChart ranges) = ControlCharts.Individuals(name, unit, [.. entries.Select(Label)], [.. entries.Select(e => value(e)!.Value)]);
        ShownCharts shown = Shown(of, span, entries.Count, values, ranges);
        int presses = entries.Select(e => e.PressId).Distinct(StringComparer.Ordinal).Count();
        return presses > 1 ? shown with { Note = Invariant($"{shown.Note} {presses} presses lie in one chart, each with its own middle: choose one.") } : shown;
    }

    private async Task<ShownCharts> ThicknessAsync(LogSpan span, CancellationToken cancellation)
    {
        List<LogEntry> entries = [.. (await log.LastAsync(LogKind.Thickness, span, MostReadings, cancellation)).Where(e => e.Thickness is not null)];

        // Sheets of different stocks have different means, so each is told from the first mean of its run.
        if (entries.Count < ControlCharts.FewestPoints)
            return Few(ChartedFigure.Thickness, span, entries.Count);
        Dictionary<string, double> first = entries.GroupBy(e => e.RunId ?? "", StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.First().Thickness!.PointsMm.Average(), StringComparer.Ordinal);
        (ControlChart means, ControlChart ranges) = ControlCharts.MeansAndRanges("Thickness from the first sheet of its run", "mm", [.. entries.Select(Label)],
            [.. entries.Select(e => (IReadOnlyList<double>)[.. e.Thickness!.PointsMm.Select(p => p - first[e.RunId ?? ""])])]);
        return Shown(ChartedFigure.Thickness, span, entries.Count, means, ranges);
    }

    private async Task<ShownCharts> SpoiledAsync(LogSpan span, CancellationToken cancellation)
    {
        List<RunActual> actuals = [.. (await log.ActualsAsync(span, MostReadings, cancellation)).Where(a => a.Made > 0)];
        return actuals.Count < ControlCharts.FewestPoints
            ? Few(ChartedFigure.Spoiled, span, actuals.Count)
            : Shown(ChartedFigure.Spoiled, span, actuals.Count, ControlCharts.Shares("Share of spoiled sheets", [.. actuals.Select(a => a.RunId)], [.. actuals.Select(a => (a.Spoiled, a.Made))]));
    }

    private static string Label(LogEntry entry) => Invariant($"{entry.RunId ?? entry.PressId} {entry.At:MM-dd HH:mm}");

    private static ShownCharts Shown(ChartedFigure of, LogSpan span, int readings, params IReadOnlyList<ControlChart> charts) => new(
        of, span.PressId, charts, readings,
        Invariant($"The last {readings} readings. Limits follow from the readings themselves: they tell what this press does, not what a customer wants."));

    private static ShownCharts Few(ChartedFigure of, LogSpan span, int readings) => new(
        of, span.PressId, [], readings, Invariant($"{readings} readings; a chart needs {ControlCharts.FewestPoints} at least, and says little under twenty."));
}
