using Laydown.Measures;
using Laydown.Plan.StockRoom;

namespace Laydown.Shop.Press;

/// <summary>What stands in the stock room and what was done there. Every change is one transaction: done or not done, also after a kill at any time.</summary>
public interface IStockRoom
{
    /// <summary>All lots, also those that are used up, by id.</summary>
    Task<IReadOnlyList<StockLot>> LotsAsync(CancellationToken cancellation);

    /// <summary>What was done last, newest first.</summary>
    /// <param name="lotId">Of one lot; null for all.</param>
    /// <param name="most">Most moves.</param>
    /// <param name="cancellation">Ends the reading.</param>
    Task<IReadOnlyList<StockMove>> MovesAsync(string? lotId, int most, CancellationToken cancellation);

    /// <summary>What was done for a run, in the order it was done.</summary>
    Task<IReadOnlyList<StockMove>> MovesOfRunAsync(string runId, CancellationToken cancellation);

    /// <summary>Changes lots: other writers wait from before the lots are read till they are saved.</summary>
    /// <param name="change">From the lots to the change, or why nothing is changed.</param>
    /// <param name="cancellation">Stops before saving.</param>
    Task<Reading<StockChange>> ChangeAsync(Func<IReadOnlyList<StockLot>, Reading<StockChange>> change, CancellationToken cancellation);

    /// <summary>Changes lots by what was done for a run: other writers wait from before lots and moves are read till the change is saved.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="change">From the lots and the moves of the run, in the order they were done, to the change, or why nothing is changed.</param>
    /// <param name="cancellation">Stops before saving.</param>
    Task<Reading<StockChange>> ChangeAsync(string runId, Func<IReadOnlyList<StockLot>, IReadOnlyList<StockMove>, Reading<StockChange>> change, CancellationToken cancellation);

    /// <summary>Points of ordering set in the shop, by stock; a stock without one goes by its file.</summary>
    Task<IReadOnlyList<ReorderPoint>> PointsAsync(CancellationToken cancellation);

    /// <summary>Sets the point of a stock, in place of the one before.</summary>
    Task SetPointAsync(ReorderPoint point, CancellationToken cancellation);
}
