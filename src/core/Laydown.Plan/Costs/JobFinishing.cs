using Laydown.Plan.Orders;

namespace Laydown.Plan.Costs;

/// <summary>Work after printing on an item.</summary>
/// <param name="Kind">What; the shop has a rate for it.</param>
/// <param name="UnitsEach">Holes, eyelets, pieces, or metres of cut or hem, for each piece.</param>
public sealed record JobFinishing(FinishingKind Kind, decimal UnitsEach);
