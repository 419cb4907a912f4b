namespace Laydown.Plan.Orders;

/// <summary>What a customer ordered.</summary>
/// <param name="Id">The order's number, unique in the shop.</param>
/// <param name="Customer">Who ordered.</param>
/// <param name="Received">Day it came.</param>
/// <param name="Note">Words of the customer, or null.</param>
/// <param name="Items">Its items; at least one.</param>
public sealed record Order(string Id, string Customer, DateOnly Received, string? Note, IReadOnlyList<Item> Items);
