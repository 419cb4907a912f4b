namespace Laydown.Plan.Drawings;

/// <summary>A drawing of a week, and where in it things lie.</summary>
/// <param name="Svg">The drawing as SVG text.</param>
/// <param name="Axis">Time from left to right.</param>
/// <param name="LeftPx">Where the axis begins.</param>
/// <param name="TopPx">Where the bars of the first press begin.</param>
/// <param name="RowPx">From the bars of one press to those of the next.</param>
/// <param name="BarPx">Height of a bar.</param>
public sealed record WeekDrawn(string Svg, WeekAxis Axis, double LeftPx, double TopPx, double RowPx, double BarPx);
