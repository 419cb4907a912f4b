namespace Laydown.Layout.Plates;

/// <summary>What two cuts of the third stage part: waste, a pane, a pane and waste, or two panes one above the other.</summary>
/// <param name="Left">Left cut.</param>
/// <param name="Right">Right cut.</param>
/// <param name="Spots">Panes, lowest first.</param>
internal sealed record PlateCell(int Left, int Right, IReadOnlyList<PlateSpot> Spots);
