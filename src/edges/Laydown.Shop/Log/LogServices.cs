using Laydown.Shop.Orders;
using Laydown.Shop.Press;

namespace Laydown.Shop.Log;

/// <summary>What the shop can do with its log.</summary>
/// <param name="Keep">Takes entries in.</param>
/// <param name="Read">Reads them.</param>
/// <param name="Learn">Learns estimates.</param>
/// <param name="Charts">Makes charts.</param>
/// <param name="Review">Reviews a time.</param>
/// <param name="Overhead">Sets overhead that runs carried against what was spent.</param>
/// <param name="Use">Tells what runs used of their stock; null where the shop keeps no stock room.</param>
public sealed record LogServices(KeepLog Keep, ReadLog Read, LearnEstimates Learn, ShowCharts Charts, ReviewShop Review, ReviewOverhead Overhead, BookUse? Use = null)
{
    /// <summary>All of it for one shop.</summary>
    /// <param name="catalogue">What the shop has.</param>
    /// <param name="store">Its runs.</param>
    /// <param name="log">The log.</param>
    /// <param name="clock">Tells the time.</param>
    /// <param name="room">The stock room, where what runs used is booked; null for none.</param>
    public static LogServices Of(Catalogue catalogue, IShopStore store, ILogStore log, TimeProvider clock, IStockRoom? room = null)
    {
        BookUse? use = room is null ? null : new(catalogue, store, log, room, clock);
        return new(new(catalogue, store, log, clock, use), new(log), new(log), new(log), new(catalogue, log, clock), new(catalogue, store, log, clock), use);
    }
}
