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

    public Task<Reading<StockChange>> ChangeAsync(Func<IReadOnlyList<StockLot>, Reading<StockChange>> change, CancellationToken cancellation)
    {
        lock (gate)
        {
            Reading<StockChange> made = change([.. lots.Values]);
            if (made.IsTaken)
            {
                foreach (StockLot lot in made.Value.Lots)
                    lots[lot.Id] = lot;
                moves.AddRange(made.Value.Moves);
            }

            return Task.FromResult(made);
        }
    }
}
