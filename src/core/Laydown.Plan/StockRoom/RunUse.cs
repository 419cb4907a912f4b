using Laydown.Press.Stocks;

namespace Laydown.Plan.StockRoom;

/// <summary>What a run really used of its stocks, good and spoiled sheets and those beyond the plan, and the moves that bring the room to it.</summary>
/// <remarks>
/// The room is brought to what was used, whatever it says before: so nothing is taken twice, and a log that is corrected corrects the room. Sheets of several stocks are told together in the log; each stock
/// has its share of them as planned (common practice, no source).
/// </remarks>
public static class RunUse
{
    /// <summary>What was used of each stock: boards and blanks, whole; of a roll metres, whole centimetres up.</summary>
    /// <param name="run">The run.</param>
    /// <param name="stocks">Its stocks, as <see cref="StockPicks.StockIds"/> names them.</param>
    /// <param name="made">Sheets that were made, good and spoiled; 0 or more.</param>
    /// <returns>By the id of the stock; together as many sheets as were made.</returns>
    public static IReadOnlyDictionary<string, decimal> Used(Runs.Run run, IReadOnlyList<Stock> stocks, long made)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(made);
        List<int> planned = [.. stocks.Select(s => StockPicks.Sheets(run, s))];
        long all = Math.Max(1, planned.Sum(n => (long)n));

        // Whole sheets of each stock by its share; what is left over goes to the largest remainders, the first first.
        List<long> sheets = [.. planned.Select(n => made * n / all)];
        foreach (int i in Enumerable.Range(0, planned.Count).OrderByDescending(i => made * planned[i] % all).Take((int)Math.Max(0, made - sheets.Sum())))
            sheets[i]++;
        return Enumerable.Range(0, stocks.Count).ToDictionary(i => stocks[i].Id, i => Quantity(run, stocks[i], sheets[i], planned[i]), StringComparer.Ordinal);
    }

    /// <summary>What the room says was taken for a run and not brought back, of the lots of one of its stocks.</summary>
    /// <param name="stock">The stock.</param>
    /// <param name="lots">The room.</param>
    /// <param name="moves">Moves of the run.</param>
    public static decimal Taken(Stock stock, IReadOnlyList<StockLot> lots, IEnumerable<StockMove> moves)
    {
        HashSet<string> own = [.. StockPicks.OfSize(stock, lots).Select(l => l.Id)];
        return moves.Where(m => own.Contains(m.LotId)).Sum(Net);
    }

    /// <summary>Whether stock of a run was taken and not brought back; rests of its own that went out again are none.</summary>
    /// <param name="moves">Moves of the run.</param>
    public static bool IsTaken(IEnumerable<StockMove> moves) => moves.GroupBy(m => m.LotId, StringComparer.Ordinal).Any(l => l.All(m => m.Kind != StockMoveKind.Offcut) && l.Sum(Net) > 0);

    /// <summary>Moves that bring the room to what a run used; none where it stands so, or holds no lot of the stock.</summary>
    /// <param name="run">The run.</param>
    /// <param name="stocks">Its stocks.</param>
    /// <param name="lots">The room. Where it holds less than was used, what is there is taken.</param>
    /// <param name="before">Moves of the run so far, in the order they were done.</param>
    /// <param name="made">Sheets that were made, good and spoiled; null where the run is not done: then what the log had taken is brought back.</param>
    /// <param name="place">Where its rests are put.</param>
    /// <param name="cause">A move with who, when, why and the entry of the log; the rest of it is ignored.</param>
    public static IReadOnlyList<StockMove> Moves(
        Runs.Run run, IReadOnlyList<Stock> stocks, IReadOnlyList<StockLot> lots, IReadOnlyList<StockMove> before, long? made, string place, StockMove cause)
    {
        StockMove bare = cause with { RunId = run.Id, Lot = null, Place = null };
        IReadOnlyDictionary<string, decimal>? used = made is { } sheets ? Used(run, stocks, sheets) : null;
        List<StockMove> moves = [];
        List<Stock> booked = [];
        foreach (Stock stock in stocks)
        {
            List<StockLot> own = [.. StockPicks.OfSize(stock, lots)];
            decimal taken = Taken(stock, lots, before), wanted = used?[stock.Id] ?? Taken(stock, lots, before.Where(m => m.LogEntry is null));
            List<StockMove> some = [.. wanted > taken ? Further(own, before, run.Id, wanted - taken, bare) : Back(own, before, taken - wanted, bare)];
            moves.AddRange(some);
            if (taken > 0 || some.Count > 0)
                booked.Add(stock);
            if (used is not null)
                moves.AddRange(GivenFree(own, run.Id, some, bare));
        }

        moves.AddRange(made is null ? RestsOut(lots, before, bare) : RestsIn(run, booked, lots, before, place, bare));
        return moves;
    }

    private static decimal Quantity(Runs.Run run, Stock stock, long sheets, int planned) =>
        stock.Kind != StockKind.Roll ? sheets : planned == 0 ? 0 : Math.Ceiling(StockPicks.Needed(run, stock) * sheets / planned * 100m) / 100m;

    private static decimal Net(StockMove move) => move.Kind switch { StockMoveKind.Consume => move.Quantity, StockMoveKind.Return => -move.Quantity, _ => 0 };

    // What is kept back for the run first, then lots it took from before, then the oldest.
    private static IEnumerable<StockMove> Further(List<StockLot> own, IReadOnlyList<StockMove> before, string runId, decimal left, StockMove bare)
    {
        foreach (StockLot lot in own.OrderByDescending(l => l.ReservedFor(runId) > 0).ThenByDescending(l => before.Where(m => m.LotId == l.Id).Sum(Net) > 0))
        {
            decimal quantity = Math.Min(left, Math.Min(lot.OnHand, lot.Free + lot.ReservedFor(runId)));
            if (quantity <= 0)
                continue;
            left -= quantity;
            yield return bare with { Kind = StockMoveKind.Consume, LotId = lot.Id, Quantity = quantity };
        }
    }

    // To the lots they came from, the last first.
    private static IEnumerable<StockMove> Back(List<StockLot> own, IReadOnlyList<StockMove> before, decimal left, StockMove bare)
    {
        foreach (string id in before.Where(m => m.Kind == StockMoveKind.Consume && own.Exists(l => l.Id == m.LotId)).Select(m => m.LotId).Reverse().Distinct(StringComparer.Ordinal))
        {
            decimal quantity = Math.Min(left, before.Where(m => m.LotId == id).Sum(Net));
            if (quantity <= 0)
                continue;
            left -= quantity;
            yield return bare with { Kind = StockMoveKind.Return, LotId = id, Quantity = quantity };
        }
    }

    // A run that is done needs nothing kept back.
    private static IEnumerable<StockMove> GivenFree(List<StockLot> own, string runId, List<StockMove> taken, StockMove bare) =>
        own.Select(l => (l.Id, Left: l.ReservedFor(runId) - taken.Where(m => m.LotId == l.Id && m.Kind == StockMoveKind.Consume).Sum(m => m.Quantity))).Where(l => l.Left > 0)
            .Select(l => bare with { Kind = StockMoveKind.Release, LotId = l.Id, Quantity = l.Left });

    // Rests come in once, with the stock of the run, by hand or by the log.
    private static IEnumerable<StockMove> RestsIn(Runs.Run run, List<Stock> booked, IReadOnlyList<StockLot> lots, IReadOnlyList<StockMove> before, string place, StockMove bare) =>
        RestsOf(before).Any(r => r.Net > 0) ? [] : StockPicks.RestsIn(run, booked, lots, place, DateOnly.FromDateTime(bare.At.Date), bare.At, bare.By).Select(m => m with { Why = bare.Why, LogEntry = bare.LogEntry });

    // Rests that the log brought in and that are still there go out again.
    private static IEnumerable<StockMove> RestsOut(IReadOnlyList<StockLot> lots, IReadOnlyList<StockMove> before, StockMove bare) =>
        from rest in RestsOf(before.Where(m => m.LogEntry is not null))
        let lot = lots.FirstOrDefault(l => l.Id == rest.LotId)
        let there = Math.Min(rest.Net, lot?.Free ?? 0)
        where there > 0
        select bare with { Kind = StockMoveKind.Consume, LotId = rest.LotId, Quantity = there };

    private static IEnumerable<(string LotId, decimal Net)> RestsOf(IEnumerable<StockMove> moves)
    {
        List<StockMove> all = [.. moves];
        return all.Where(m => m.Kind == StockMoveKind.Offcut).Select(m => m.LotId).Distinct(StringComparer.Ordinal)
            .Select(id => (id, all.Where(m => m.LotId == id).Sum(m => m.Kind == StockMoveKind.Offcut ? m.Quantity : -Net(m)))).ToList();
    }
}
