namespace Laydown.Colour.Charts;

/// <summary>The patches of a chart, before they are laid on a stock.</summary>
/// <param name="Name">Name for people.</param>
/// <param name="Kind">What it is for.</param>
/// <param name="InkNames">Inks in order.</param>
/// <param name="TotalLimitPercent">Largest sum of inks of any patch, percent.</param>
/// <param name="Patches">Patches in the order of the design; at least one.</param>
public sealed record Chart(
    string Name, ChartKind Kind, IReadOnlyList<string> InkNames, double TotalLimitPercent, IReadOnlyList<ChartPatch> Patches);
