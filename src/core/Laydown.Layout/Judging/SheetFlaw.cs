using Laydown.Measures;

namespace Laydown.Layout.Judging;

/// <summary>One thing wrong with how pieces lie on a sheet.</summary>
/// <param name="Kind">What.</param>
/// <param name="Pieces">The pieces concerned, from 0, ascending.</param>
/// <param name="Where">The place to look at, mm on the sheet: what two share or what lies between them, the piece, the place kept out.</param>
/// <param name="ApartMm">
/// Distance found, mm; negative where two lie on each other: how deep, what they share over the longer side of the rectangle around it. 0 for the other kinds.
/// </param>
/// <param name="SharedMm2">Area that two share, mm²; 0 where they share none.</param>
public sealed record SheetFlaw(SheetFlawKind Kind, IReadOnlyList<int> Pieces, RectMm Where, double ApartMm, double SharedMm2);
