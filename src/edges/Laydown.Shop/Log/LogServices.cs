using Laydown.Shop.Orders;

namespace Laydown.Shop.Log;

/// <summary>What the shop can do with its log.</summary>
/// <param name="Keep">Takes entries in.</param>
/// <param name="Read">Reads them.</param>
/// <param name="Learn">Learns estimates.</param>
/// <param name="Charts">Makes charts.</param>
/// <param name="Review">Reviews a time.</param>
/// <param name="Overhead">Sets overhead that runs carried against what was spent.</param>
public sealed record LogServices(KeepLog Keep, ReadLog Read, LearnEstimates Learn, ShowCharts Charts, ReviewShop Review, ReviewOverhead Overhead)
{
    /// <summary>All of it for one shop.</summary>
    public static LogServices Of(Catalogue catalogue, IShopStore store, ILogStore log, TimeProvider clock) =>
        new(new(catalogue, store, log, clock), new(log), new(log), new(log), new(catalogue, log, clock), new(catalogue, store, log, clock));
}
