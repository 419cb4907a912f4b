using Laydown.Layout.Marks;

namespace Laydown.Plan.Orders;

/// <summary>Work after printing.</summary>
/// <param name="Kind">What.</param>
/// <param name="CountEach">How many on each piece (holes, eyelets); 1 otherwise.</param>
/// <param name="WidthMm">Width folded under for a hem, or flat width of a pole pocket, mm; null for the item's bleed (25 mm where it has none), or 100 mm.</param>
/// <param name="InsetMm">Distance of eyelets or holes from the finished edge to their centres, mm; null for 20 mm, or for holes the shop's rule.</param>
/// <param name="Edges">Edges it is done at; null for all, for a pole pocket the upper and the lower.</param>
public sealed record Finishing(
    FinishingKind Kind, int CountEach, double? WidthMm = null, double? InsetMm = null, IReadOnlyList<PieceEdge>? Edges = null);
