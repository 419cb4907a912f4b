using Laydown.Plan.Orders;

namespace Laydown.Plan.Runs;

/// <summary>An item that passed its checks and waits for a run.</summary>
/// <param name="Item">As ordered.</param>
/// <param name="OrderId">Its order.</param>
/// <param name="SmallestTextPt">Smallest text at finished size, points; null for none.</param>
/// <param name="SmallestModuleMm">Narrowest module of a bar code at finished size, mm; null for none.</param>
public sealed record ReadyItem(Item Item, string OrderId, double? SmallestTextPt, double? SmallestModuleMm);
