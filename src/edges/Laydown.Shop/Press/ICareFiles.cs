using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Plan.Upkeep;

namespace Laydown.Shop.Press;

/// <summary>Reads upkeep and stock rooms from files of any origin, without a shop.</summary>
public interface ICareFiles
{
    /// <summary>What upkeep is planned from, or every fault with file and field.</summary>
    /// <param name="path">Where it lies.</param>
    Reading<UpkeepRequest> Upkeep(string path);

    /// <summary>A stock room with moves to be done, or every fault with file and field.</summary>
    /// <param name="path">Where it lies.</param>
    Reading<StockRoomFile> Room(string path);
}
