using Laydown.Measures;

namespace Laydown.Colour.Charts;

/// <summary>A line of text on a chart sheet, outside all patches.</summary>
/// <param name="Text">The words.</param>
/// <param name="Start">Start of the base line, mm from the sheet's lower left corner.</param>
/// <param name="SizeMm">Size of the type, mm.</param>
public sealed record ChartLabel(string Text, PointMm Start, double SizeMm);
