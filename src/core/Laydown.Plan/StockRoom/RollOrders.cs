using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Stocks;

namespace Laydown.Plan.StockRoom;

/// <summary>How many whole rolls are to be ordered, so that every waiting run can be kept back in turn.</summary>
/// <remarks>
/// Metres are not added up: rolls are kept back on paper as <see cref="RollPicks"/> does it, with none, one, two… new ones behind those in the room, until it
/// can be done. A roll too short for what is wanted in one length so counts for nothing. A stock without a lot counts as whole rolls and one rest.
/// </remarks>
internal static class RollOrders
{
    /// <summary>The rolls to order of a stock.</summary>
    /// <param name="stock">The roll.</param>
    /// <param name="own">Its lots, oldest first.</param>
    /// <param name="runs">Runs that wait, in the order in which they are kept back.</param>
    public static RollOrder Of(Stock stock, IReadOnlyList<StockLot> own, IReadOnlyList<Run> runs)
    {
        decimal whole = WholeM(stock);
        IReadOnlyList<StockLot> room = own.Count > 0 ? own : Described(stock, whole);
        List<Run> waiting = [.. runs.Where(r => StockPicks.StockIds(r).Contains(stock.Id, StringComparer.Ordinal))];

        // A run that could not be kept back with a new roll for each of its sections never can.
        int most = waiting.Sum(r => RollPicks.SectionsOf(r, stock).Count()) + room.Sum(l => (int)Math.Ceiling(l.Short / whole));
        IReadOnlyList<Run> never = Kept(stock, room, waiting, whole, most).Failed;
        List<Run> able = [.. waiting.Where(r => !never.Contains(r))];

        // Fewer metres than the runs lack are never enough.
        decimal lacking = able.Sum(r => Math.Max(0, StockPicks.Needed(r, stock) - room.Sum(l => l.ReservedFor(r.Id)))) + room.Sum(l => l.Short) - room.Sum(l => l.Free);
        int rolls = Math.Max(0, (int)Math.Ceiling(lacking / whole));
        Shelf shelf = Kept(stock, room, able, whole, rolls);
        while (shelf.Failed.Count > 0 && rolls < most)
            shelf = Kept(stock, room, able, whole, ++rolls);
        IReadOnlyList<StockLot> tooShort = TooShort(shelf, room);
        int more = UpTo(stock, shelf.Lots.Where(l => !tooShort.Any(s => s.Id == l.Id)).Sum(l => l.Free), whole);
        return new(rolls + more, (rolls + more) * whole, Words(stock, shelf, tooShort, never, whole));
    }

    private static decimal WholeM(Stock stock) => Math.Max(0.01m, Math.Floor((decimal)stock.LengthMm / 10m) / 100m);

    // Everything kept back in turn: what was counted too low first, then each run.
    private static Shelf Kept(Stock stock, IReadOnlyList<StockLot> room, IReadOnlyList<Run> runs, decimal whole, int rolls)
    {
        List<StockLot> lots = [.. room, .. Enumerable.Range(1, rolls).Select(n => New(stock, n, whole))];
        List<Run> failed = [];
        Run? longest = null;
        foreach (decimal missing in room.SelectMany(l => Parts(l.Short, whole)))
        {
            if (lots.FindIndex(l => l.Free >= missing) is var at and >= 0)
                lots[at] = Keep(lots[at], "", missing);
        }

        foreach (Run run in runs)
        {
            decimal left = StockPicks.Needed(run, stock) - lots.Sum(l => l.ReservedFor(run.Id));
            if (left <= 0)
                continue;
            (IReadOnlyDictionary<string, decimal> picked, InputFault? fault) = RollPicks.Of(run, stock, lots, StockPicks.SheetsOf(run, stock), left);
            if (fault is not null)
                failed.Add(run);
            else if (picked.Keys.Any(IsNew) && (longest is null || LongestM(run, stock) > LongestM(longest, stock)))
                longest = run;
            lots = fault is null ? [.. lots.Select(l => picked.TryGetValue(l.Id, out decimal metres) ? Keep(l, run.Id, metres) : l)] : lots;
        }

        return new(lots, failed, longest, longest is null ? 0 : LongestM(longest, stock));
    }

    // Rolls of the room that nothing was taken from and that do not hold what a new roll was taken for.
    private static IReadOnlyList<StockLot> TooShort(Shelf shelf, IReadOnlyList<StockLot> room) =>
        [.. room.Where(l => l.Free > 0 && l.Free < shelf.LongestM && shelf.Lots.Any(s => s.Id == l.Id && s.Free == l.Free))];

    // At the point of reordering or under it: whole rolls up to the level wanted.
    private static int UpTo(Stock stock, decimal free, decimal whole) =>
        stock.ReorderAt is { } point && free <= point ? Math.Max(0, (int)Math.Ceiling((Math.Max(stock.OrderTo ?? point, point) - free) / whole)) : 0;

    private static string? Words(Stock stock, Shelf shelf, IReadOnlyList<StockLot> tooShort, IReadOnlyList<Run> never, decimal whole)
    {
        List<string> words = [];
        if (tooShort.Count > 0)
        {
            words.Add(Invariant($"Not counted: {string.Join(", ", tooShort.Select(l => Invariant($"{l.Id} with {l.Free:0.##} m")))}, too short for the {shelf.LongestM:0.##} m that {shelf.Longest!.Id} takes in one length."));
        }

        words.AddRange(never.Select(r => Invariant($"{r.Id} takes {LongestM(r, stock):0.##} m in one length; a roll has {whole:0.##} m.")));
        return words.Count > 0 ? string.Join(" ", words) : null;
    }

    private static decimal LongestM(Run run, Stock stock) => RollPicks.SectionsOf(run, stock).DefaultIfEmpty(0).Max();

    private static IEnumerable<decimal> Parts(decimal metres, decimal most)
    {
        for (decimal left = metres; left > 0; left -= most)
            yield return Math.Min(left, most);
    }

    private static List<StockLot> Described(Stock stock, decimal whole) =>
        [.. Parts(stock.OnHand, whole).Select((m, i) => New(stock, i + 1, m) with { Id = Invariant($"{stock.Id} {i + 1}") })];

    private static StockLot New(Stock stock, int number, decimal metres) =>
        new(Invariant($"\0{number}"), stock.Id, stock.Kind, stock.WidthMm, stock.LengthMm, "", metres, [], DateOnly.MaxValue);

    private static bool IsNew(string lotId) => lotId.StartsWith('\0');

    private static StockLot Keep(StockLot lot, string runId, decimal metres) => lot with { Reserved = [.. lot.Reserved, new(runId, metres)] };

    private sealed record Shelf(IReadOnlyList<StockLot> Lots, IReadOnlyList<Run> Failed, Run? Longest, decimal LongestM);
}
