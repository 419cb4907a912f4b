using Laydown.Core.Tests.Press;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Stocks;

namespace Laydown.Core.Tests.Plan;

/// <summary>What the press prints in one go where several stocks lie on it at once: reckoned by hand.</summary>
public sealed class PrintedGoLawTests
{
    [Fact]
    public void Different_blanks_are_printed_as_long_as_the_longest_lane_across_all_lanes()
    {
        Stock large = Presses.Board() with { Id = "large", Kind = StockKind.Blank, WidthMm = 480, LengthMm = 640 };
        RunRequest request = Works.Request(stock: large);
        request = request with
        {
            Beside = [large with { Id = "small", WidthMm = 300, LengthMm = 400 }],
            Sheets = [request.Sheets[0] with { Repeats = 10, StockId = "large" }, request.Sheets[0] with { Sheet = new(300, 400), Repeats = 24, StockId = "small" }],
            Belt = request.Belt with
            {
                Lanes = [new(1, 20, 480, 10, 510, "large", 640, false, 1), new(2, 520, 300, 12, 830, "small", 400, false, 2), new(3, 900, 300, 12, 1210, "small", 400, false, 3)],
            },
        };

        // 10 × 640 mm is longer than 12 × 400 mm; lanes reach from 20 mm to 1200 mm.
        PrintedGo go = Assert.Single(PrintedGo.Of(request));
        Assert.Equal((new SizeMm(1180, 640), 10), (go.Extent, go.Times));
        Assert.Equal(10, RunTimes.Goes(request));
        Assert.Equal([10, 24], request.Stocks.Select(s => SetUps.NeededOnHand(request, s)));
    }

    [Fact]
    public void Two_rolls_are_printed_once_from_the_first_edge_to_the_last_and_each_is_paid_by_its_own_price()
    {
        Stock left = Presses.Board() with { Id = "left", Kind = StockKind.Roll, WidthMm = 1200, LengthMm = 50_000, ThicknessMm = 0.4, YoungGpa = 0, WeightGPerM2 = 300, OnHand = 40, Price = Money.FromUnits(2m) };
        RunRequest one = Works.Request(stock: left);
        SheetLayout Roll(string id, double width, double x) => new(
            new(width, 3000), 5, [new(one.Items[0].Item.Id, 1, new(x, 150, 500, 2700), false)], 1, [], StockId: id);
        RunRequest request = one with
        {
            Beside = [left with { Id = "right", WidthMm = 900, Price = Money.FromUnits(3m) }],
            Sheets = [Roll("left", 1200, 10), Roll("right", 900, 300)],
            Belt = one.Belt with { Lanes = [new(1, 0, 1200, 1), new(2, 1300, 900, 1)], FrontLay = "none" },
        };
        PrintedGo go = Assert.Single(PrintedGo.Of(request));
        Assert.Equal((new SizeMm(1300 + 300 + 500 - 10, 2700), 1), (go.Extent, go.Times));

        Run run = RunPlanner.Plan(request).Value;
        Assert.Equal(Money.FromUnits(3 * (2m + 3m)), run.Cost.Lines[0].Amount);
        Assert.Equal(["right"], run.BesideStockIds);

        // Two rolls are hung, one after the other: twice the 50 s of one.
        Assert.Equal(100.0 / 60, run.Time.HandlingMinutes, 9);
    }
}
