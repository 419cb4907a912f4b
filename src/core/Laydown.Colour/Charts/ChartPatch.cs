namespace Laydown.Colour.Charts;

/// <summary>One patch of a chart.</summary>
/// <param name="Id">Name, unique on the chart, such as P0042.</param>
/// <param name="Part">Part of the design it belongs to, such as <c>wedge Cyan</c>.</param>
/// <param name="Inks">Parts of one full ink, 0 to 1, each a whole code of 8 bits over 255, so that files and reference say the
/// same.</param>
public sealed record ChartPatch(string Id, string Part, IReadOnlyList<double> Inks);
