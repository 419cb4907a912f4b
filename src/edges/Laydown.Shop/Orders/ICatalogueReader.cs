using Laydown.Measures;

namespace Laydown.Shop.Orders;

/// <summary>Reads the shop's own descriptions from a folder: <c>shop.json</c>, <c>calendar.json</c> where there is one, <c>presses/</c>, <c>inks/</c>, <c>stocks/</c>, <c>conditions/</c>, <c>profiles/</c>.</summary>
public interface ICatalogueReader
{
    /// <summary>The whole catalogue, or every fault found, each with file and JSON path.</summary>
    Reading<Catalogue> Read(string folder);
}
