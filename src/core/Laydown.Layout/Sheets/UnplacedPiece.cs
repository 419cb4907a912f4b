namespace Laydown.Layout.Sheets;

/// <summary>Copies of a piece that found no place, with the reason: a layout never loses a piece silently.</summary>
/// <param name="PieceId">Which piece.</param>
/// <param name="Copies">How many of its copies; at least 1.</param>
/// <param name="Found">What was found, with unit, such as <c>1300 × 2500 mm, may not turn</c>.</param>
/// <param name="Wanted">What would have fitted, with unit.</param>
public sealed record UnplacedPiece(string PieceId, int Copies, string Found, string Wanted)
{
    /// <summary>One line for the operator.</summary>
    public override string ToString() => Invariant($"{PieceId}, {Copies} pieces not placed: found {Found}; wanted {Wanted}.");
}
