namespace Laydown.Formats.Svg;

/// <summary>How much work one SVG may make.</summary>
/// <param name="Elements">Most elements drawn, repeated ones counted each time.</param>
/// <param name="Depth">Deepest nesting.</param>
/// <param name="Pixels">Most pixels in one embedded picture.</param>
/// <param name="SideMm">Longest side, mm.</param>
public sealed record SvgLimits(long Elements, int Depth, long Pixels, double SideMm);
