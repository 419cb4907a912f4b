namespace Laydown.Plan.Orders;

/// <summary>Work after printing.</summary>
/// <param name="Kind">What.</param>
/// <param name="CountEach">How many on each piece (holes, eyelets); 1 otherwise.</param>
public sealed record Finishing(FinishingKind Kind, int CountEach);
