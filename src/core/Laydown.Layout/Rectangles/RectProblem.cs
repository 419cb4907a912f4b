namespace Laydown.Layout.Rectangles;

/// <summary>Rectangles to be laid out on sheets of one or several sizes, at the least cost.</summary>
/// <param name="Stocks">Sizes to take from; at least one.</param>
/// <param name="Pieces">What is wanted.</param>
/// <param name="Rules">How it is cut.</param>
internal sealed record RectProblem(IReadOnlyList<RectStock> Stocks, IReadOnlyList<RectPiece> Pieces, RectRules Rules);
