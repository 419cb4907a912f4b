using Laydown.Measures;

namespace Laydown.Shop.Orders;

/// <summary>An order file that could not be taken.</summary>
/// <param name="FileName">Name of the file without folder.</param>
/// <param name="Faults">Why.</param>
public sealed record RefusedOrder(string FileName, IReadOnlyList<InputFault> Faults);
