using Laydown.Layout.Boards;
using Laydown.Layout.Repeats;
using Laydown.Layout.Sheets;
using Laydown.Plan.Orders;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>What is to be known of the layout of a run.</summary>
public static class LayoutNotes
{
    /// <summary>Sentences: each set of items that lies on more boards than it might, each item of which more is made than asked for.</summary>
    public static IReadOnlyList<string> Of(RunRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        return [.. Apart(request), .. request.Items.Select(i => (i.Item, Made: request.Pieces(i.Item.Id))).Where(i => i.Made > i.Item.Quantity)
            .Select(i => Invariant($"{i.Item.Id}: {i.Item.Quantity} asked for, {i.Made} made: {i.Made - i.Item.Quantity} more fill {(request.Stock.Kind == StockKind.Roll ? "the roll" : "the last board")}{(i.Item.Turn?.Way == BackWay.WorkAndTurn ? ", as fronts and backs come in pairs" : "")}."))];
    }

    private static IEnumerable<string> Apart(RunRequest request)
    {
        Item?[] items = [.. request.Items.Select(i => i.Item)];
        if (items.All(i => i!.KeepWith is null))
            return [];
        string? SetOf(string pieceId) => items.FirstOrDefault(i => string.Equals(i!.Id, pieceId.Split('/')[0], StringComparison.Ordinal))?.KeepWith;
        SetSheet[] sheets = [.. request.Sheets.Select(SheetOf)];
        return Together.Spreads(sheets, SetOf).Where(s => s.IsApart).Select(s => s.ToString());
    }

    private static SetSheet SheetOf(SheetLayout sheet) => new(
        [.. sheet.Placements.Select(p => (p.PieceId, sheet.OutlineOf(p.PieceId)?.AreaMm2 ?? (p.Place.Size.AreaM2 * 1e6)))], sheet.Sheet.AreaM2 * 1e6, sheet.Repeats);
}
