namespace Laydown.Plan.Log;

/// <summary>A point of a chart with the limits that hold for it.</summary>
/// <param name="Label">What was measured, such as a run and a time.</param>
/// <param name="Value">The value, in the unit of the chart.</param>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit.</param>
public sealed record ChartPoint(string Label, double Value, double Lower, double Upper);
