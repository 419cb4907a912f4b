using Laydown.Layout.Repeats;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Orders;

/// <summary>What an order line must keep to before anyone looks at its artwork.</summary>
public static class ItemRules
{
    /// <summary>Name under which faults of an order line are filed, to tell them from faults of the artwork.</summary>
    public const string OrderFile = "order.json";

    /// <summary>Faults of one line: stock not kept, due before <paramref name="today"/>, larger than every sheet of its stock; empty when there is none.</summary>
    /// <param name="item">The line.</param>
    /// <param name="index">Its place in the order from 0, for the path of the field.</param>
    /// <param name="catalogue">What the shop has.</param>
    /// <param name="today">The day it is looked at.</param>
    public static IReadOnlyList<InputFault> Faults(Item item, int index, Catalogue catalogue, DateOnly today)
    {
        List<InputFault> faults = [];
        if (item.Due < today)
            faults.Add(Fault(index, "due", Invariant($"{item.Due:yyyy-MM-dd}"), Invariant($"{today:yyyy-MM-dd} or later")));

        Stock? stock = catalogue.Stocks.FirstOrDefault(s => string.Equals(s.Id, item.StockId, StringComparison.Ordinal));
        if (stock is null)
        {
            string kept = string.Join(", ", catalogue.Stocks.Select(s => s.Id).Order(StringComparer.Ordinal));
            faults.Add(Fault(index, "stockId", Invariant($"'{item.StockId}'"), Invariant($"one of {kept}")));
        }
        else if (!Fits(item, stock, LeastMargin(stock, catalogue)))
        {
            faults.Add(Fault(index, "widthMm", item.Printed.ToString(), Wanted(stock)));
        }

        faults.AddRange(OfBack(item, stock).Select(f => Fault(index, f.Field, f.Found, f.Wanted)));
        return faults;
    }

    private static IEnumerable<(string Field, string Found, string Wanted)> OfBack(Item item, Stock? stock)
    {
        bool ownBack = item.Build is { Layers: not null } or { Back: BackPicture.Own };
        if (item.BackArtwork is { } back && !ownBack)
            yield return ("backArtwork", Invariant($"'{back}', for a build without a picture of its own on the back"), "build with seenFrom bothSides and back own, or no backArtwork");
        if (item.Turn is not { } turn)
            yield break;
        if (item.Build is { Layers: null, SeenFrom: SeenFrom.OneSide })
            yield return ("turn", "turn, for a build that is seen from one side", "build with seenFrom bothSides, or no turn");
        if (stock is { Kind: StockKind.Roll or StockKind.Blank } && turn.Way == BackWay.WorkAndTurn)
            yield return ("turn/way", Invariant($"workAndTurn on {stock.Id}, which is a {(stock.Kind == StockKind.Roll ? "roll" : "pre-cut blank")}"), "a board, or sheetwise");
        if (turn.Way == BackWay.WorkAndTurn && item.Finishing.Any(f => f.Kind == FinishingKind.CutContour))
            yield return ("turn/way", "workAndTurn of a piece cut to its contour", "sheetwise, or a piece cut to a rectangle");
        if (turn.Way == BackWay.WorkAndTurn && item.Panels is not null)
            yield return ("turn/way", "workAndTurn of a graphic in panels", "sheetwise, or no panels");
    }

    // A roll takes larger pictures as panels and a blank is the piece itself, so only boards limit the printed size.
    private static bool Fits(Item item, Stock stock, double marginMm) => stock.Kind switch
    {
        StockKind.Board => FitsEitherWay(item.Printed, new RectMm(0, 0, stock.WidthMm, stock.LengthMm).Grown(-marginMm).Size),
        StockKind.Blank => FitsEitherWay(item.Finished, stock.Size),
        _ => Math.Min(item.Printed.WidthMm, item.Printed.HeightMm) <= stock.LengthMm,
    };

    private static bool FitsEitherWay(SizeMm piece, SizeMm sheet) => piece.FitsIn(sheet) || piece.Turned().FitsIn(sheet);

    private static double LeastMargin(Stock stock, Catalogue catalogue)
    {
        HashSet<string> presses = [.. catalogue.Conditions.Where(c => c.StockIds.Contains(stock.Id, StringComparer.Ordinal)).Select(c => c.PressId)];
        List<PressDescription> able = [.. catalogue.Presses.Where(p => presses.Contains(p.Id))];
        return able.Count == 0 ? 0 : able.Min(p => p.EdgeMarginMm);
    }

    private static string Wanted(Stock stock) => stock.Kind == StockKind.Roll
        ? Invariant($"a side of at most {stock.LengthMm:0} mm, the length of the roll")
        : Invariant($"at most {stock.Size} with bleed and margin, the size of {stock.Id}");

    private static InputFault Fault(int index, string field, string found, string wanted) =>
        new(OrderFile, null, Invariant($"/items/{index}/{field}"), found, wanted);
}
