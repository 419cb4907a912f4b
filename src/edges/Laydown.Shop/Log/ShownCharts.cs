using Laydown.Plan.Log;

namespace Laydown.Shop.Log;

/// <summary>Charts of one figure.</summary>
/// <param name="Of">What is charted.</param>
/// <param name="PressId">The press; null for all.</param>
/// <param name="Charts">The charts; none where there are too few readings.</param>
/// <param name="Readings">How many readings there are.</param>
/// <param name="Note">How to read them, and why there are none.</param>
/// <param name="Patches">Patches among the readings of a colour, by name; null for other figures.</param>
/// <param name="Patch">The one patch that is charted; null for all together.</param>
public sealed record ShownCharts(ChartedFigure Of, string? PressId, IReadOnlyList<ControlChart> Charts, int Readings, string Note,
    IReadOnlyList<string>? Patches = null, string? Patch = null);
