using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press.Stocks;

namespace Laydown.Plan.StockRoom;

/// <summary>From runs to moves: which lots a run takes, and the rests it leaves.</summary>
public static class StockPicks
{
    /// <summary>Moves that keep back what a run needs of each of its stocks: lots of their sizes, oldest first; what is kept back already counts.</summary>
    /// <param name="run">The run.</param>
    /// <param name="stocks">Its stocks, as <see cref="StockIds"/> names them.</param>
    /// <param name="lots">The room.</param>
    /// <param name="at">When.</param>
    /// <param name="by">Who.</param>
    /// <returns>The moves; none where all is kept back. Or what is missing of each stock.</returns>
    public static Reading<IReadOnlyList<StockMove>> Reserve(Runs.Run run, IReadOnlyList<Stock> stocks, IReadOnlyList<StockLot> lots, DateTimeOffset at, string by)
    {
        List<StockMove> moves = [];
        List<InputFault> faults = [];
        foreach (Stock stock in stocks)
        {
            List<StockLot> own = [.. OfSize(stock, lots)];
            decimal left = Needed(run, stock) - own.Sum(l => l.ReservedFor(run.Id));
            if (left <= 0)
                continue;
            (IReadOnlyDictionary<string, decimal> picked, InputFault? fault) = stock.Kind == StockKind.Roll
                ? RollPicks.Of(run, stock, own, SheetsOf(run, stock), left)
                : Counted(run, stock, own, left);
            moves.AddRange(own.Where(l => picked.ContainsKey(l.Id)).Select(l => new StockMove(StockMoveKind.Reserve, l.Id, picked[l.Id], at, by, run.Id)));
            if (fault is not null)
                faults.Add(fault);
        }

        return faults.Count > 0 ? Reading.Refused<IReadOnlyList<StockMove>>(faults) : Reading.Of<IReadOnlyList<StockMove>>(moves);
    }

    /// <summary>
    /// Moves that take what a run needs and bring its usable rests in, each size a lot of its own. What is not kept back for it yet is taken from what is free; what is kept back beyond its need is given free.
    /// </summary>
    /// <param name="run">The run.</param>
    /// <param name="stocks">Its stocks, as <see cref="StockIds"/> names them.</param>
    /// <param name="lots">The room.</param>
    /// <param name="place">Where the rests are put.</param>
    /// <param name="day">The day.</param>
    /// <param name="at">When.</param>
    /// <param name="by">Who.</param>
    /// <returns>The moves, or what is missing of each stock.</returns>
    public static Reading<IReadOnlyList<StockMove>> Take(
        Runs.Run run, IReadOnlyList<Stock> stocks, IReadOnlyList<StockLot> lots, string place, DateOnly day, DateTimeOffset at, string by) =>
        Reserve(run, stocks, lots, at, by).Then(kept => Reading.Of<IReadOnlyList<StockMove>>(
            [.. kept, .. Taken(run, stocks, lots, kept, at, by), .. RestsIn(run, stocks, lots, place, day, at, by)]));

    private static List<StockMove> Taken(
        Runs.Run run, IReadOnlyList<Stock> stocks, IReadOnlyList<StockLot> lots, IReadOnlyList<StockMove> kept, DateTimeOffset at, string by)
    {
        List<StockMove> moves = [];
        Dictionary<string, decimal> back = lots.ToDictionary(l => l.Id, l => l.ReservedFor(run.Id) + kept.Where(m => m.LotId == l.Id).Sum(m => m.Quantity), StringComparer.Ordinal);
        foreach (Stock stock in stocks)
        {
            decimal left = Needed(run, stock);
            foreach (StockLot lot in OfSize(stock, lots).Where(l => back[l.Id] > 0))
            {
                decimal taken = Math.Min(left, back[lot.Id]);
                if (taken <= 0)
                    break;
                moves.Add(new(StockMoveKind.Consume, lot.Id, taken, at, by, run.Id));
                back[lot.Id] -= taken;
                left -= taken;
            }
        }

        moves.AddRange(back.Where(b => b.Value > 0).OrderBy(b => b.Key, StringComparer.Ordinal).Select(b => new StockMove(StockMoveKind.Release, b.Key, b.Value, at, by, run.Id)));
        return moves;
    }

    /// <summary>Moves that bring the usable rests of a run in, each size a lot of its own.</summary>
    internal static IEnumerable<StockMove> RestsIn(Runs.Run run, IReadOnlyList<Stock> stocks, IReadOnlyList<StockLot> lots, string place, DateOnly day, DateTimeOffset at, string by)
    {
        int number = Last(lots);
        foreach (Stock stock in stocks)
        {
            foreach ((double width, double length, int count) in Rests(run, stock))
            {
                StockLot lot = new(Name(++number), BoardOf(stock), stock.Kind, width, length, place, 0, [], day, run.Id);
                yield return new(StockMoveKind.Offcut, lot.Id, count, at, by, run.Id, Lot: lot);
            }
        }
    }

    // Boards and blanks: from the oldest lots, as many as there are of each.
    private static (IReadOnlyDictionary<string, decimal> Picked, InputFault? Fault) Counted(Runs.Run run, Stock stock, List<StockLot> own, decimal left)
    {
        Dictionary<string, decimal> picked = new(StringComparer.Ordinal);
        foreach (StockLot lot in own.Where(l => l.Free > 0))
        {
            decimal taken = Math.Min(left, lot.Free);
            if (taken <= 0)
                break;
            picked[lot.Id] = taken;
            left -= taken;
        }

        return (picked, left > 0 ? Missing(run, stock, own, left) : null);
    }

    /// <summary>What is said where a stock lacks for a run.</summary>
    internal static InputFault Missing(Runs.Run run, Stock stock, List<StockLot> own, decimal left) => own.Count == 0
        ? new("stock room", null, "quantity", Invariant($"no lot of {stock.Id} in the room for run {run.Id}"), Invariant($"{Needed(run, stock)} free: take goods in first"))
        : new("stock room", null, "quantity", Invariant($"{left} of {stock.Id} too few free for run {run.Id}"), Invariant($"{Needed(run, stock)} free"));

    /// <summary>Ids of the stocks a run is printed on, the first first.</summary>
    public static IReadOnlyList<string> StockIds(Runs.Run run) => [run.StockId, .. run.BesideStockIds ?? []];

    /// <summary>Boards or blanks a run takes of one of its stocks, or metres of roll.</summary>
    public static decimal Needed(Runs.Run run, Stock stock) => stock.Kind == StockKind.Roll
        ? Math.Ceiling((decimal)SheetsOf(run, stock).Sum(s => s.Repeats * s.Sheet.HeightMm) / 10m) / 100m
        : SheetsOf(run, stock).Sum(s => s.Repeats);

    /// <summary>Sheets of a run on one of its stocks, as planned.</summary>
    internal static int Sheets(Runs.Run run, Stock stock) => SheetsOf(run, stock).Sum(s => s.Repeats);

    /// <summary>Sheets of a run that are printed on a stock: those of further stocks name theirs, all others are of the first.</summary>
    internal static IEnumerable<SheetLayout> SheetsOf(Runs.Run run, Stock stock)
    {
        IReadOnlyList<string> beside = run.BesideStockIds ?? [];
        return beside.Contains(stock.Id, StringComparer.Ordinal)
            ? run.Sheets.Where(s => string.Equals(s.StockId, stock.Id, StringComparison.Ordinal))
            : run.Sheets.Where(s => s.StockId is null || !beside.Contains(s.StockId, StringComparer.Ordinal));
    }

    /// <summary>Usable rests a run of boards leaves: width and length in mm as the board lies in the rack, largest first, and how many of each; none of blanks and rolls.</summary>
    public static IReadOnlyList<(double WidthMm, double LengthMm, int Count)> Rests(Runs.Run run, Stock stock) => stock.Kind != StockKind.Board ? [] :
        [.. SheetsOf(run, stock).SelectMany(s => s.Offcuts.Select(o => (Size: InRack(o.Size, s.Sheet, stock), s.Repeats)))
            .GroupBy(o => o.Size).OrderByDescending(g => g.Key.WidthMm * g.Key.LengthMm).ThenBy(g => g.Key.WidthMm).Select(g => (g.Key.WidthMm, g.Key.LengthMm, g.Sum(o => o.Repeats)))];

    // A sheet may be drawn turned, so that its grain stands upright; where there is no grain, the shorter side is the width.
    private static (double WidthMm, double LengthMm) InRack(SizeMm rest, SizeMm sheet, Stock stock)
    {
        bool turned = stock.Grain == GrainDirection.None ? rest.WidthMm > rest.HeightMm : Math.Abs(sheet.WidthMm - stock.WidthMm) > Math.Abs(sheet.HeightMm - stock.WidthMm);
        double width = Math.Floor(rest.WidthMm), length = Math.Floor(rest.HeightMm);
        return turned ? (length, width) : (width, length);
    }

    /// <summary>The lots of a stock's own size, or, for an offcut kept as a stock of its own, of that offcut's: oldest first.</summary>
    public static IEnumerable<StockLot> OfSize(Stock stock, IReadOnlyList<StockLot> lots) => lots
        .Where(l => l.StockId == BoardOf(stock) && StockShelf.IsSize(l, stock))
        .OrderBy(l => l.Since).ThenBy(l => l.Id, StringComparer.Ordinal);

    /// <summary>The next free name of a lot.</summary>
    public static string NextName(IReadOnlyList<StockLot> lots) => Name(Last(lots) + 1);

    private static string BoardOf(Stock stock) => stock.OtherSizeOf ?? stock.Id;

    private static string Name(int number) => Invariant($"L-{number:0000}");

    private static int Last(IReadOnlyList<StockLot> lots) => lots
        .Select(l => l.Id.StartsWith("L-", StringComparison.Ordinal) && int.TryParse(l.Id.AsSpan(2), out int n) ? n : 0).DefaultIfEmpty(0).Max();
}
