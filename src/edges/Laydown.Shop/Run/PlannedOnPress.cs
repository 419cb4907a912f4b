using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>A run as it would be on another press.</summary>
/// <param name="Run">The run.</param>
/// <param name="Items">Its items with their layers on that press.</param>
internal sealed record PlannedOnPress(Laydown.Plan.Runs.Run Run, IReadOnlyList<ItemRecord> Items);
