namespace Laydown.Instances.Plates;

/// <summary>What two cuts of the second stage part.</summary>
/// <param name="Bottom">Lower cut.</param>
/// <param name="Top">Upper cut.</param>
/// <param name="Cells">Cells, from left to right.</param>
public sealed record CutRow(int Bottom, int Top, IReadOnlyList<CutCell> Cells);
