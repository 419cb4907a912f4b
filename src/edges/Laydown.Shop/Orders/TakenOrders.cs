namespace Laydown.Shop.Orders;

/// <summary>What came of taking orders in.</summary>
/// <param name="Orders">Orders taken, with their items, by id.</param>
/// <param name="Refused">Order files that were refused.</param>
/// <param name="Unchanged">Orders that were in the store before and did not change.</param>
public sealed record TakenOrders(IReadOnlyList<OrderRecord> Orders, IReadOnlyList<RefusedOrder> Refused, int Unchanged);
