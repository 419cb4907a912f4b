using Laydown.Plan.Orders;

namespace Laydown.Shop.Orders;

/// <summary>An order with its items.</summary>
/// <param name="Order">As it came.</param>
/// <param name="Items">Its items with all that is known.</param>
public sealed record OrderRecord(Order Order, IReadOnlyList<ItemRecord> Items);
