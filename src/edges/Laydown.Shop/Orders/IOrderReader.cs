using Laydown.Measures;
using Laydown.Plan.Orders;

namespace Laydown.Shop.Orders;

/// <summary>Reads order files.</summary>
public interface IOrderReader
{
    /// <summary>The order in the JSON file at <paramref name="path"/>, or its faults with JSON path; known stocks are checked elsewhere.</summary>
    Reading<Order> Read(string path);
}
