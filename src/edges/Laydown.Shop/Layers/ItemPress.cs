using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Plan.Build;
using Laydown.Plan.Runs;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Laydown.Shop.Build;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Layers;

/// <summary>What an item is printed with: press, inks, sheet, print condition and the layers that follow.</summary>
/// <param name="Press">The press.</param>
/// <param name="Condition">The print condition.</param>
/// <param name="InkSet">The inks.</param>
/// <param name="Stock">The sheet.</param>
/// <param name="Stack">The layers.</param>
internal sealed record ItemPress(PressDescription Press, PrintCondition Condition, InkSet InkSet, Stock Stock, LayerStack Stack)
{
    /// <summary>Reflectance of a white wall behind a piece without a lamp; common practice, no source.</summary>
    private const double Wall = 0.85;

    /// <summary>What the item would be printed with, or in the print condition asked for.</summary>
    public static Reading<ItemPress> Of(ItemRecord item, string? conditionId, Catalogue catalogue)
    {
        if (conditionId is not null)
            return On(item.Item.Build, item.Item.StockId, conditionId, catalogue, Invariant($"item {item.Item.Id}"));
        return PressChooser.Choose(ReadyItems.Of(item.Item, item.OrderId, item.Artwork), PressRooms.Of(catalogue))
            .Then(c => Reading.Of(new ItemPress(c.Press, c.Condition, c.InkSet, c.Stock, c.Stack)));
    }

    /// <summary>The layers of a build on a stock in a print condition.</summary>
    public static Reading<ItemPress> On(Plan.Orders.BuildWish build, string stockId, string conditionId, Catalogue catalogue, string file)
    {
        PrintCondition? condition = catalogue.Conditions.FirstOrDefault(c => Is(c.Id, conditionId));
        Stock? stock = catalogue.Stocks.FirstOrDefault(s => Is(s.Id, stockId));
        PressDescription? press = catalogue.Presses.FirstOrDefault(p => Is(p.Id, condition?.PressId ?? ""));
        InkSet? inks = catalogue.InkSets.FirstOrDefault(s => Is(s.Id, condition?.InkSetId ?? ""));
        if (condition is null)
            return Refused(file, "print condition", Invariant($"'{conditionId}'"), Invariant($"one of {string.Join(", ", catalogue.Conditions.Select(c => c.Id))}"));
        if (stock is null)
            return Refused(file, "stock", Invariant($"'{stockId}'"), Invariant($"one of {string.Join(", ", catalogue.Stocks.Select(s => s.Id))}"));
        if (!condition.StockIds.Contains(stockId, StringComparer.Ordinal))
            return Refused(file, "print condition", Invariant($"{condition.Id}, which does not hold for {stockId}"), Invariant($"a stock of it: {string.Join(", ", condition.StockIds)}"));
        if (press is null || inks is null)
            return Refused(file, "print condition", Invariant($"{condition.Id}, whose press or ink set is unknown"), "a press and an ink set of the shop");
        return StackBuilder.Derive(build, stock, press, inks, file, "/build").Then(stack => Reading.Of(new ItemPress(press, condition, inks, stock, stack)));
    }

    /// <summary>Light by day and with the lamp on, as previews of runs are drawn.</summary>
    public (Scene Day, Scene Night) Scenes() =>
        (Stack.Lit ? Scene.Day(Condition.RoomLux) : Scene.Day(Condition.RoomLux, Wall), Scene.Lit());

    private static bool Is(string one, string other) => string.Equals(one, other, StringComparison.Ordinal);

    private static Reading<ItemPress> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<ItemPress>(new InputFault(file, null, field, found, wanted));
}
