using Laydown.Layout.Hands;
using Laydown.Measures;

namespace Laydown.Shop.Layout;

/// <summary>A conflict in words.</summary>
/// <param name="Number">Number on the drawing and in the list, from 1.</param>
/// <param name="Kind">What.</param>
/// <param name="Severity">A stop keeps the layout from being saved.</param>
/// <param name="Sheet">Which sheet, from 0; −1 for none.</param>
/// <param name="Spots">Pieces concerned, from 0.</param>
/// <param name="Where">The place to look at, mm on the sheet.</param>
/// <param name="Words">One sentence.</param>
public sealed record JudgedConflict(int Number, ConflictKind Kind, Severity Severity, int Sheet, IReadOnlyList<int> Spots, RectMm Where, string Words);
