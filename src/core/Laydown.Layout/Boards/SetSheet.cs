namespace Laydown.Layout.Boards;

/// <summary>A layout as the question sees it which sets lie on it.</summary>
/// <param name="Pieces">Each copy on it and the area it takes.</param>
/// <param name="Area">Its own area, in the same unit.</param>
/// <param name="Repeats">How often it is cut.</param>
public sealed record SetSheet(IReadOnlyList<(string PieceId, double Area)> Pieces, double Area, int Repeats);
