namespace Laydown.Instances.Plates;

/// <summary>What two cuts of the first stage part.</summary>
/// <param name="Left">Left cut.</param>
/// <param name="Right">Right cut.</param>
/// <param name="Rows">Rows, from the bottom.</param>
public sealed record CutColumn(int Left, int Right, IReadOnlyList<CutRow> Rows);
