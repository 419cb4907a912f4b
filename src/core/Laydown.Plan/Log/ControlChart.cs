using Laydown.Measures;

namespace Laydown.Plan.Log;

/// <summary>A chart of values in time with a centre and limits, and what its rules say.</summary>
/// <param name="Name">What is charted.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Centre">The centre line.</param>
/// <param name="Points">The points, oldest first.</param>
/// <param name="Signals">What the rules say, by point.</param>
/// <param name="Figures">How centre and limits were reckoned.</param>
public sealed record ControlChart(
    string Name, string Unit, double Centre, IReadOnlyList<ChartPoint> Points, IReadOnlyList<ChartSignal> Signals, IReadOnlyList<Figure> Figures);
