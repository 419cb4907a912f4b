using Laydown.Plan.Orders;

namespace Laydown.Plan.Runs;

/// <summary>An item on its way into a run, with what was measured of it.</summary>
/// <param name="Item">As ordered.</param>
/// <param name="OrderId">Its order.</param>
/// <param name="Ink">Measured laydown of each layer and ink.</param>
/// <param name="SmallestTextPt">Smallest text at finished size, points; null for none.</param>
/// <param name="SmallestModuleMm">Narrowest module of a bar code at finished size, mm; null for none.</param>
/// <param name="CutLengthMm">Length of the contour cut of one piece, mm; null to take the edge of the finished rectangle.</param>
public sealed record PlannedItem(
    Item Item, string OrderId, IReadOnlyList<LayerCoverage> Ink, double? SmallestTextPt, double? SmallestModuleMm, double? CutLengthMm);
