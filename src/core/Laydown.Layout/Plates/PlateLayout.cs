namespace Laydown.Layout.Plates;

/// <summary>Plates cut.</summary>
/// <param name="Plates">Columns by plate, from left to right; what is right of the last column is waste, but a rest to keep on the last plate.</param>
/// <param name="Waste">Area cut less area of the panes: whole plates, the last one up to its last column.</param>
internal sealed record PlateLayout(IReadOnlyList<IReadOnlyList<PlateColumn>> Plates, long Waste);
