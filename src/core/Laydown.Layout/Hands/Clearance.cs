namespace Laydown.Layout.Hands;

/// <summary>Bare length from a piece to what it meets first in one direction.</summary>
/// <param name="Side">Which side of the piece.</param>
/// <param name="Mm">The length, mm; negative where the piece lies on it or over the edge.</param>
/// <param name="Spot">The piece met, from 0; null for the edge of the sheet.</param>
public sealed record Clearance(PieceSide Side, double Mm, int? Spot);
