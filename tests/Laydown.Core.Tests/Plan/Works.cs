using Laydown.Core.Tests.Press;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Core.Tests.Plan;

/// <summary>Small invented orders and runs for tests.</summary>
internal static class Works
{
    public static readonly BuildWish Simple = new(false, false, false, null, null, 0, 0, false);

    public static Item Item(string id = "X-1-1", double width = 500, double height = 400, int quantity = 4, string stock = "board",
        BuildWish? build = null, double distance = 2, int day = 10, params Finishing[] finishing) =>
        new(id, "Sign " + id, "a.pdf", width, height, 5, quantity, stock, build ?? Simple, finishing, new DateOnly(2026, 12, day), distance, 1, null);

    public static ShopRates ShopRates(double overhead = 20, double margin = 25, double spoil = 3) => new("EUR", Money.FromUnits(30.0), overhead, margin, 20, spoil,
        [new(FinishingKind.CutSquare, 4, 0.5, new Money(2)), new(FinishingKind.Drill, 3, 0.4, new Money(5)), new(FinishingKind.Pack, 3, 0.5, new Money(45))], 30);

    public static LayerStack Stack(bool lit = false, params InkGroup[] groups) => new(
        [.. (groups.Length == 0 ? [InkGroup.Colour] : groups).Select(g => new Layer(SheetFace.First, g, g == InkGroup.White ? WhiteSource.Flood : null, null, 1, 100, 0, false))], lit, []);

    public static PlannedItem Planned(Item item, double coverage = 0.5) =>
        new(item, "X-1", [new(0, InkRole.Cyan, coverage, 2.4), new(0, InkRole.Black, coverage / 2, 2.4)], null, null, null);

    public static RunRequest Request(PressDescription? press = null, Stock? stock = null, LayerStack? stack = null, ShopRates? rates = null, params PlannedItem[] items)
    {
        press ??= Presses.Hybrid(Presses.Mode("a"));
        stock ??= Presses.Board();
        items = items.Length == 0 ? [Planned(Item())] : items;
        List<Placement> placements = [];
        double y = 10;
        foreach (PlannedItem item in items)
        {
            placements.Add(new(item.Item.Id, 1, new(10, y, item.Item.Printed.WidthMm, item.Item.Printed.HeightMm), false));
            y += item.Item.Printed.HeightMm;
        }

        SheetLayout sheet = new(stock.Size, 5, placements, items[0].Item.Quantity, []);
        return new("R-1", press, Presses.Inks(), stock, Presses.Condition(modes: [.. press.Modes.Select(m => m.Id)]), rates ?? ShopRates(), stack ?? Stack(), items,
            [sheet], new(2600, stock.WidthMm, stock.LengthMm, false, [new(1, 0, stock.WidthMm, items[0].Item.Quantity)], ["A"], ["B"], 0, "pins"));
    }
}
