namespace Laydown.Layout.Contours;

/// <summary>Contours to be laid out on a strip, or on boards.</summary>
/// <param name="Pieces">What is wanted; ids unique.</param>
/// <param name="GapMm">Least distance between two pieces, and between pieces and keep-outs, mm; 0 or more: the tool's diameter and what must stand between two cuts.</param>
/// <param name="Strip">The strip; null where <paramref name="Stocks"/> are given.</param>
/// <param name="Stocks">The boards; empty where <paramref name="Strip"/> is given.</param>
public sealed record ContourProblem(IReadOnlyList<ContourPiece> Pieces, double GapMm, ContourStrip? Strip, IReadOnlyList<ContourStock> Stocks)
{
    /// <summary>Pieces on a strip.</summary>
    public static ContourProblem On(ContourStrip strip, double gapMm, params IReadOnlyList<ContourPiece> pieces) => new(pieces, gapMm, strip, []);

    /// <summary>Pieces on boards.</summary>
    public static ContourProblem On(IReadOnlyList<ContourStock> stocks, double gapMm, params IReadOnlyList<ContourPiece> pieces) =>
        new(pieces, gapMm, null, stocks);
}
