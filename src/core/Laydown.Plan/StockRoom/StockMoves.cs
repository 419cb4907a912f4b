using Laydown.Measures;
using Laydown.Press.Stocks;

namespace Laydown.Plan.StockRoom;

/// <summary>Does moves in the stock room: all of them or none. Nothing ever falls under nothing.</summary>
public static class StockMoves
{
    /// <summary>Most of one lot: a million boards, or metres.</summary>
    public const decimal Most = 1_000_000;

    /// <summary>The lots that change, or every fault of the first move that cannot be done.</summary>
    /// <param name="lots">The room before.</param>
    /// <param name="moves">What is done, in order; each sees what those before it left.</param>
    /// <param name="stocks">What the shop keeps.</param>
    public static Reading<StockChange> Do(IReadOnlyList<StockLot> lots, IReadOnlyList<StockMove> moves, IReadOnlyList<Stock> stocks)
    {
        Dictionary<string, StockLot> room = lots.ToDictionary(l => l.Id, StringComparer.Ordinal);
        List<string> touched = [];
        foreach ((int i, StockMove? move) in moves.Index())
        {
            if (string.IsNullOrWhiteSpace(move?.LotId))
                return Reading.Refused<StockChange>(new InputFault("stock room", null, Invariant($"/moves/{i}/lotId"), "nothing", "a lot of the room, or a new one"));
            StockLot? lot = room.GetValueOrDefault(move.LotId);
            List<InputFault> faults = [.. Faults(move, lot, stocks, Invariant($"/moves/{i}"))];
            if (faults.Count > 0)
                return Reading.Refused<StockChange>(faults);
            room[move.LotId] = After(move, lot ?? move.Lot! with { OnHand = 0, Reserved = [] });
            touched.Add(move.LotId);
        }

        return Reading.Of(new StockChange([.. touched.Distinct().Select(id => room[id])], moves));
    }

    private static StockLot After(StockMove move, StockLot lot) => move.Kind switch
    {
        StockMoveKind.Receive or StockMoveKind.Offcut or StockMoveKind.Return => lot with { OnHand = lot.OnHand + move.Quantity },
        StockMoveKind.Reserve => Kept(lot, move.RunId!, lot.ReservedFor(move.RunId!) + move.Quantity),
        StockMoveKind.Release => Kept(lot, move.RunId!, lot.ReservedFor(move.RunId!) - move.Quantity),
        StockMoveKind.Consume => Kept(lot with { OnHand = lot.OnHand - move.Quantity }, move.RunId ?? "", Math.Max(0, lot.ReservedFor(move.RunId ?? "") - move.Quantity)),
        StockMoveKind.Count => lot with { OnHand = move.Quantity },
        _ => lot with { Place = move.Place! },
    };

    private static StockLot Kept(StockLot lot, string runId, decimal quantity) => lot with
    {
        Reserved = [.. lot.Reserved.Where(r => r.RunId != runId), .. quantity > 0 ? [new StockReservation(runId, quantity)] : (StockReservation[])[]],
    };

    private static IEnumerable<InputFault> Faults(StockMove move, StockLot? lot, IReadOnlyList<Stock> stocks, string path)
    {
        const string File = "stock room";
        if (lot is null && move.Lot is null)
            return [new(File, null, path + "/lotId", move.LotId, "a lot of the room, or a new one")];
        StockLot known = lot ?? move.Lot!;
        List<InputFault> faults = [.. lot is null ? NewLot(move, stocks, path) : []];
        bool counts = move.Kind == StockMoveKind.Count, puts = move.Kind == StockMoveKind.Place;
        if (move.Quantity < 0 || move.Quantity > Most || (move.Quantity == 0 && !counts && !puts))
            faults.Add(new(File, null, path + "/quantity", Invariant($"{move.Quantity}"), counts || puts ? Invariant($"0 to {Most}") : Invariant($"over 0, at most {Most}")));
        else if (known.Kind != StockKind.Roll && move.Quantity != decimal.Truncate(move.Quantity))
            faults.Add(new(File, null, path + "/quantity", Invariant($"{move.Quantity}"), "whole boards or blanks"));
        if (string.IsNullOrWhiteSpace(move.By))
            faults.Add(new(File, null, path + "/by", "nothing", "who does it"));
        if (move.Kind is StockMoveKind.Reserve or StockMoveKind.Release or StockMoveKind.Return && move.RunId is null)
            faults.Add(new(File, null, path + "/runId", "nothing", "the run it is for"));
        if (puts && string.IsNullOrWhiteSpace(move.Place))
            faults.Add(new(File, null, path + "/place", "nothing", "where it stands now"));
        return faults.Count > 0 ? faults : TooMuch(move, lot, path);
    }

    private static IEnumerable<InputFault> NewLot(StockMove move, IReadOnlyList<Stock> stocks, string path)
    {
        const string File = "stock room";
        StockLot lot = move.Lot!;
        Stock? stock = stocks.FirstOrDefault(s => string.Equals(s.Id, lot.StockId, StringComparison.Ordinal));
        if (move.Kind is not (StockMoveKind.Receive or StockMoveKind.Offcut))
            yield return new(File, null, path + "/kind", Invariant($"{move.Kind} of a new lot"), "goods that come in");
        if (!string.Equals(lot.Id, move.LotId, StringComparison.Ordinal))
            yield return new(File, null, path + "/lot/id", lot.Id, move.LotId);
        if (stock is null)
            yield return new(File, null, path + "/lot/stockId", lot.StockId, "a stock the shop keeps");
        else if (stock.Kind != lot.Kind)
            yield return new(File, null, path + "/lot/kind", Invariant($"{lot.Kind}"), Invariant($"{stock.Kind}, as {stock.Id} is"));
        if (!(lot.WidthMm > 0 && lot.LengthMm > 0))
            yield return new(File, null, path + "/lot/widthMm", Invariant($"{lot.WidthMm} × {lot.LengthMm} mm"), "over 0 mm each");
        else if (stock is not null && !FitsIn(lot, stock))
            yield return new(File, null, path + "/lot/widthMm", Invariant($"{lot.WidthMm} × {lot.LengthMm} mm"), Invariant($"no larger than {stock.Id}, {stock.WidthMm} × {stock.LengthMm} mm"));
        if (string.IsNullOrWhiteSpace(lot.Place))
            yield return new(File, null, path + "/lot/place", "nothing", "where it stands");
    }

    private static bool FitsIn(StockLot lot, Stock stock) =>
        Math.Min(lot.WidthMm, lot.LengthMm) <= Math.Min(stock.WidthMm, stock.LengthMm) + 0.5 && Math.Max(lot.WidthMm, lot.LengthMm) <= Math.Max(stock.WidthMm, stock.LengthMm) + 0.5;

    private static IEnumerable<InputFault> TooMuch(StockMove move, StockLot? lot, string path)
    {
        if (lot is null)
            return [];
        decimal kept = move.RunId is null ? 0 : lot.ReservedFor(move.RunId);
        (decimal most, string what) = move.Kind switch
        {
            StockMoveKind.Reserve => (lot.Free, "free"),
            StockMoveKind.Release => (kept, "kept back for that run"),
            StockMoveKind.Consume => (Math.Min(lot.OnHand, lot.Free + kept), "there and not kept back for other runs"),
            StockMoveKind.Receive or StockMoveKind.Offcut or StockMoveKind.Return => (Most - lot.OnHand, "room for"),
            _ => (Most, "there"),
        };
        return move.Quantity <= most ? [] : [new("stock room", null, path + "/quantity", Invariant($"{move.Quantity} of {lot.Id}"), Invariant($"at most {most}, which is {what}"))];
    }
}
