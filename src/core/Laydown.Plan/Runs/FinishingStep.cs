using Laydown.Plan.Orders;

namespace Laydown.Plan.Runs;

/// <summary>Work of one kind after the press, all items of a run.</summary>
/// <param name="Kind">What is done.</param>
/// <param name="Minutes">How long, minutes.</param>
public sealed record FinishingStep(FinishingKind Kind, double Minutes);
