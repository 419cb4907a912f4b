using Laydown.Measures;

namespace Laydown.Shop.Orders;

/// <summary>An order file that could not be taken.</summary>
/// <param name="FileName">The order's folder and the file in it, such as <c>TW-1049/order.json</c>.</param>
/// <param name="Faults">Why.</param>
public sealed record RefusedOrder(string FileName, IReadOnlyList<InputFault> Faults);
