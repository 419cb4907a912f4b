using Laydown.Measures;
using Laydown.Press.Stocks;

namespace Laydown.Plan.StockRoom;

/// <summary>From runs to moves: which lots a run takes, and the rests it leaves.</summary>
public static class StockPicks
{
    /// <summary>Moves that keep back what a run needs: lots of its size, oldest first; what is kept back already counts.</summary>
    /// <param name="run">The run.</param>
    /// <param name="stock">Its stock.</param>
    /// <param name="lots">The room.</param>
    /// <param name="at">When.</param>
    /// <param name="by">Who.</param>
    /// <returns>The moves; none where all is kept back. Or what is missing.</returns>
    public static Reading<IReadOnlyList<StockMove>> Reserve(Runs.Run run, Stock stock, IReadOnlyList<StockLot> lots, DateTimeOffset at, string by)
    {
        decimal left = Needed(run, stock) - lots.Sum(l => l.ReservedFor(run.Id));
        List<StockMove> moves = [];
        foreach (StockLot lot in OfSize(stock, lots).Where(l => l.Free > 0))
        {
            decimal taken = Math.Min(left, lot.Free);
            if (taken <= 0)
                break;
            moves.Add(new(StockMoveKind.Reserve, lot.Id, taken, at, by, run.Id));
            left -= taken;
        }

        return left > 0
            ? Reading.Refused<IReadOnlyList<StockMove>>(new InputFault("stock room", null, "quantity", Invariant($"{left} of {stock.Id} too few free for run {run.Id}"), Invariant($"{Needed(run, stock)} free")))
            : Reading.Of<IReadOnlyList<StockMove>>(moves);
    }

    /// <summary>Moves that take what is kept back for a run and bring its usable rests in, each size a lot of its own.</summary>
    /// <param name="run">The run.</param>
    /// <param name="stock">Its stock.</param>
    /// <param name="lots">The room.</param>
    /// <param name="place">Where the rests are put.</param>
    /// <param name="day">The day.</param>
    /// <param name="at">When.</param>
    /// <param name="by">Who.</param>
    /// <returns>The moves, or why not: nothing is kept back for the run.</returns>
    public static Reading<IReadOnlyList<StockMove>> Take(
        Runs.Run run, Stock stock, IReadOnlyList<StockLot> lots, string place, DateOnly day, DateTimeOffset at, string by)
    {
        List<StockMove> moves = [.. lots.Where(l => l.ReservedFor(run.Id) > 0).OrderBy(l => l.Id, StringComparer.Ordinal)
            .Select(l => new StockMove(StockMoveKind.Consume, l.Id, l.ReservedFor(run.Id), at, by, run.Id))];
        if (moves.Count == 0)
            return Reading.Refused<IReadOnlyList<StockMove>>(new InputFault("stock room", null, "runId", Invariant($"nothing kept back for run {run.Id}"), "stock reserved for the run first"));
        int number = Last(lots);
        foreach ((double width, double length, int count) in Rests(run, stock))
        {
            StockLot lot = new(Name(++number), BoardOf(stock), stock.Kind, width, length, place, 0, [], day, run.Id);
            moves.Add(new(StockMoveKind.Offcut, lot.Id, count, at, by, run.Id, Lot: lot));
        }

        return Reading.Of<IReadOnlyList<StockMove>>(moves);
    }

    /// <summary>Boards or blanks a run takes, or metres of roll.</summary>
    public static decimal Needed(Runs.Run run, Stock stock) => stock.Kind == StockKind.Roll
        ? Math.Ceiling((decimal)run.Sheets.Sum(s => s.Repeats * s.Sheet.HeightMm) / 10m) / 100m
        : run.Sheets.Sum(s => s.Repeats);

    /// <summary>Usable rests a run of boards leaves: width and length in mm as the board lies in the rack, largest first, and how many of each; none of blanks and rolls.</summary>
    public static IReadOnlyList<(double WidthMm, double LengthMm, int Count)> Rests(Runs.Run run, Stock stock) => stock.Kind != StockKind.Board ? [] :
        [.. run.Sheets.SelectMany(s => s.Offcuts.Select(o => (Size: InRack(o.Size, s.Sheet, stock), s.Repeats)))
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
