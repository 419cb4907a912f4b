using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Shop.Press;

namespace Laydown.Web.Tests.Sample;

/// <summary>A stock room in memory, with the rules of <see cref="IStockRoom"/>.</summary>
internal sealed class MemoryStockRoom : IStockRoom
{
    private readonly Lock gate = new();
    private readonly SortedDictionary<string, StockLot> lots = new(StringComparer.Ordinal);
    private readonly List<StockMove> moves = [];
    private readonly SortedDictionary<string, ReorderPoint> points = new(StringComparer.Ordinal);

    public Task<IReadOnlyList<StockLot>> LotsAsync(CancellationToken cancellation)
    {
        lock (gate)
            return Task.FromResult<IReadOnlyList<StockLot>>([.. lots.Values]);
    }

    public Task<IReadOnlyList<StockMove>> MovesAsync(string? lotId, int most, CancellationToken cancellation)
    {
        lock (gate)
            return Task.FromResult<IReadOnlyList<StockMove>>([.. moves.AsEnumerable().Reverse().Where(m => lotId is null || m.LotId == lotId).Take(most)]);
    }

    public Task<IReadOnlyList<StockMove>> MovesOfRunAsync(string runId, CancellationToken cancellation)
    {
        lock (gate)
            return Task.FromResult<IReadOnlyList<StockMove>>([.. moves.Where(m => m.RunId == runId)]);
    }

    public Task<Reading<StockChange>> ChangeAsync(Func<IReadOnlyList<StockLot>, Reading<StockChange>> change, CancellationToken cancellation) =>
        ChangeAsync("", (there, _) => change(there), cancellation);

    public Task<Reading<StockChange>> ChangeAsync(
        string runId, Func<IReadOnlyList<StockLot>, IReadOnlyList<StockMove>, Reading<StockChange>> change, CancellationToken cancellation)
    {
        lock (gate)
        {
            Reading<StockChange> made = change([.. lots.Values], [.. moves.Where(m => m.RunId == runId)]);
            if (made.IsTaken)
            {
                foreach (StockLot lot in made.Value.Lots)
                    lots[lot.Id] = lot;
                moves.AddRange(made.Value.Moves);
            }

            return Task.FromResult(made);
        }
    }

    public Task<IReadOnlyList<ReorderPoint>> PointsAsync(CancellationToken cancellation)
    {
        lock (gate)
            return Task.FromResult<IReadOnlyList<ReorderPoint>>([.. points.Values]);
    }

    public Task SetPointAsync(ReorderPoint point, CancellationToken cancellation)
    {
        lock (gate)
            points[point.StockId] = point;
        return Task.CompletedTask;
    }
}
