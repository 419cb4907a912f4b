using Laydown.Measures;

namespace Laydown.Shop.Run;

/// <summary>Price of an item at one quantity, printed by itself: set-up is shared over these pieces alone.</summary>
/// <param name="Pieces">How many.</param>
/// <param name="Price">Price of all of them without tax, rounded by the shop's policy; null where it cannot be priced.</param>
/// <param name="Each">Price of one, to the cent.</param>
/// <param name="Minutes">Time at the press, min.</param>
/// <param name="Because">Cost, overhead, margin and rounding, in one line; or why there is no price.</param>
public sealed record QuoteBreak(int Pieces, Money? Price, Money? Each, double Minutes, string Because);
