namespace Laydown.Layout.Plates;

/// <summary>What two cuts of the second stage part.</summary>
/// <param name="Bottom">Lower cut.</param>
/// <param name="Top">Upper cut.</param>
/// <param name="Cells">Cells from left to right; what is right of the last is waste.</param>
internal sealed record PlateRow(int Bottom, int Top, IReadOnlyList<PlateCell> Cells);
