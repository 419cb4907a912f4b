using Laydown.Measures;

namespace Laydown.Layout.Boards;

/// <summary>One size of board to take from, or one offcut.</summary>
/// <param name="Id">Its name; unique among the stocks of a layout.</param>
/// <param name="Size">Size, mm.</param>
/// <param name="OnHand">How many there are; null for as many as wanted.</param>
/// <param name="Price">What one costs, in any one unit; 0 or more. An offcut costs less than its share of a whole board.</param>
/// <param name="EdgeMarginMm">Unprintable margin on each side, mm; 0 or more.</param>
/// <param name="KeepOuts">Places where nothing may lie, such as clamps and damage, mm from the lower left corner; null for none.</param>
public sealed record BoardStock(
    string Id, SizeMm Size, int? OnHand, double Price, double EdgeMarginMm = 0, IReadOnlyList<RectMm>? KeepOuts = null);
