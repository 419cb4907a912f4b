using Laydown.Measures;
using Laydown.Plan.Orders;

namespace Laydown.Plan.Costs;

/// <summary>Rate of one kind of finishing.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="MinutesFirst">Minutes for the first piece of an item (set-up).</param>
/// <param name="MinutesPerUnit">Minutes for each unit: hole, eyelet, piece, metre of cut or hem, or m² laminated or mounted.</param>
/// <param name="MaterialPerUnit">Material for each unit.</param>
public sealed record FinishingRate(FinishingKind Kind, double MinutesFirst, double MinutesPerUnit, Money MaterialPerUnit);
