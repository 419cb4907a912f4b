namespace Laydown.Colour.Charts;

/// <summary>The patches of a chart, before they are laid on a stock.</summary>
/// <param name="Name">Name for people.</param>
/// <param name="Kind">What it is for.</param>
/// <param name="InkNames">Inks in order.</param>
/// <param name="TotalLimitPercent">Largest sum of inks of any patch, percent.</param>
/// <param name="Patches">Patches in the order of the design; at least one.</param>
public sealed record Chart(
    string Name, ChartKind Kind, IReadOnlyList<string> InkNames, double TotalLimitPercent, IReadOnlyList<ChartPatch> Patches)
{
    /// <summary>Layers in the order they are printed, all on one face; none for a chart whose inks go down together.</summary>
    public IReadOnlyList<ChartLayer> Layers { get; init; } = [];

    /// <summary>What the person who prints and reads it has to know, a sentence each; printed on the sheet before the cautions.</summary>
    public IReadOnlyList<string> Instructions { get; init; } = [];
}
