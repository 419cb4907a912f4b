namespace Laydown.Shop.Layout;

/// <summary>Copies of a piece that have no place.</summary>
/// <param name="PieceId">Which piece.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Copies">How many.</param>
public sealed record MissingCopies(string PieceId, string Name, int Copies);
