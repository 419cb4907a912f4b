namespace Laydown.Instances.Panels;

/// <summary>Panels of an axis.</summary>
/// <param name="Starts">Where each starts.</param>
/// <param name="Ends">Where each ends.</param>
/// <param name="Cost">Sum of seams.</param>
/// <param name="Spread">Spread of lengths.</param>
public sealed record PanelAnswer(IReadOnlyList<int> Starts, IReadOnlyList<int> Ends, long Cost, long Spread);
