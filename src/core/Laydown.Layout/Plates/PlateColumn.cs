namespace Laydown.Layout.Plates;

/// <summary>What two cuts of the first stage part.</summary>
/// <param name="Left">Left cut.</param>
/// <param name="Right">Right cut.</param>
/// <param name="Rows">Rows from the bottom; what is above the last is waste.</param>
internal sealed record PlateColumn(int Left, int Right, IReadOnlyList<PlateRow> Rows);
