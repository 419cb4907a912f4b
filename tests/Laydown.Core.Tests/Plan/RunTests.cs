using Laydown.Core.Tests.Press;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Xunit;

namespace Laydown.Core.Tests.Plan;

public sealed class RunLawTests
{
    [Fact]
    public void The_same_request_gives_the_same_run()
    {
        RunRequest request = Works.Request();
        Assert.Equivalent(RunPlanner.Plan(request).Value, RunPlanner.Plan(request).Value, strict: true);
    }

    [Fact]
    public void Ink_is_laydown_times_area_times_full_volume_for_every_role_of_the_press()
    {
        Run run = RunPlanner.Plan(Works.Request()).Value;

        // 4 sheets of one piece of 510 × 410 mm, half a laydown of cyan, a quarter of black, at 720 dpi and 14 pl (11.25 ml/m²).
        double area = 4 * 0.510 * 0.410;
        Assert.Equal([InkRole.Cyan, InkRole.Magenta, InkRole.Yellow, InkRole.Black, InkRole.White, InkRole.Clear], run.Inks.Select(i => i.Role));
        Assert.Equal(area * 0.5 * 11.25, run.Inks[0].PrintedMl, tolerance: 0.001 * area * 11.25);
        Assert.Equal(area * 0.25 * 11.25, run.Inks[3].PrintedMl, tolerance: 0.001 * area * 11.25);
        Assert.Equal(0, run.Inks[1].PrintedMl);
        Assert.Equal(50, run.Inks[0].MeanCoveragePercent, 9);

        // Set-up ink is the same for each channel, and white has two.
        Assert.Equal([5.0, 5, 5, 5, 10, 5], run.Inks.Select(i => i.SetUpMl));
    }

    [Fact]
    public void Time_is_set_up_and_scans_and_handling_not_hidden()
    {
        RunRequest request = Works.Request();
        Run run = RunPlanner.Plan(request).Value;
        double sheet = Scanning.Of(request.Press, request.Press.Modes[0], 510, 410, 1).Value.Seconds;
        Assert.Equal(12, run.Time.SetUpMinutes);
        Assert.Equal(4 * sheet / 60, run.Time.PrintMinutes, 9);

        // Four boards of 50 s handling, 30 s of which hides behind printing, but for the first.
        Assert.Equal(((4 * 50) - Math.Min(3 * 30, 4 * sheet)) / 60, run.Time.HandlingMinutes, 9);
    }

    [Fact]
    public void Two_printed_faces_cost_two_set_ups_and_both_are_scanned()
    {
        LayerStack both = new([.. Works.Stack().Layers, Works.Stack().Layers[0] with { Face = SheetFace.Second }], false, []);
        Run one = RunPlanner.Plan(Works.Request()).Value, two = RunPlanner.Plan(Works.Request(stack: both)).Value;
        Assert.Equal(2 * one.Time.PrintMinutes, two.Time.PrintMinutes, 9);
        Assert.Equal(2 * one.Time.SetUpMinutes, two.Time.SetUpMinutes);
        Assert.Contains(two.SetUp.Figures, f => f.Name.StartsWith("growth", StringComparison.Ordinal));
    }

    [Fact]
    public void Blanks_in_lanes_are_crossed_together()
    {
        Stock blank = Presses.Board() with { Kind = StockKind.Blank, WidthMm = 510, LengthMm = 410 };
        RunRequest request = Works.Request(stock: blank);
        request = request with { Belt = request.Belt with { Lanes = [new(1, 0, 510, 2), new(2, 600, 510, 2)] } };
        Assert.Equal(2, RunTimes.Goes(request));
        Assert.Equal(new SizeMm(1110, 410), PrintedExtent.Of(request.Sheets[0], request.Belt, blank));
    }

    [Fact]
    public void A_roll_is_hung_once_and_its_whole_width_is_charged_by_the_metre()
    {
        Stock roll = Presses.Board() with { Kind = StockKind.Roll, WidthMm = 1600, LengthMm = 50_000, ThicknessMm = 0.4, YoungGpa = 0, WeightGPerM2 = 300, OnHand = 40, SpecificHeatJPerKgK = 1200 };
        RunRequest request = Works.Request(stock: roll);
        request = request with { Sheets = [request.Sheets[0] with { Sheet = new(1600, 2500), Repeats = 1 }] };
        Run run = RunPlanner.Plan(request).Value;
        Assert.Equal(50.0 / 60, run.Time.HandlingMinutes, 9);
        Assert.Equal(Money.FromUnits(20.0 * 2.5), run.Cost.Lines[0].Amount);
        Assert.Equal(24, run.SetUp.SheetMassKg, 9);
    }

    [Fact]
    public void The_set_up_names_height_dose_measures_and_the_rule_over_all_cautions()
    {
        Run run = RunPlanner.Plan(Works.Request(stack: Works.Stack(lit: true, InkGroup.White, InkGroup.Colour), stock: Presses.Board(light: SheetLight.Clear))).Value;
        Assert.InRange(run.SetUp.HeadGap.Mm - run.SetUp.HighestPointMm, 1.5 - 1e-9, 1.6);
        Assert.Contains(run.SetUp.Measure, m => m.Contains("five points", StringComparison.Ordinal) && m.Contains("highest wins", StringComparison.Ordinal));
        Assert.Contains(Cautions.Lit, run.SetUp.Cautions);
        Assert.Equal(Cautions.Rule, run.SetUp.Cautions[^1]);
        Assert.Contains(run.SetUp.Cautions, c => c.Contains("two people", StringComparison.Ordinal));
        Assert.Contains(run.SetUp.FirstPieceChecks, c => c.Contains("lamp of the job", StringComparison.Ordinal));
        Assert.Empty(run.SetUp.Refusals);
        Assert.All(run.SetUp.Figures.Concat(run.Time.Figures), f => Assert.True(f.Because.Length > 0 && f.Source.Length > 0 && double.IsFinite(f.Value)));
    }

    [Fact]
    public void Too_little_stock_and_an_empty_tank_hold_the_release()
    {
        PressDescription press = Presses.Hybrid(Presses.Mode("a"));
        press = press with { Tanks = [.. press.Tanks.Select(t => t with { LevelMl = t.Id == "T-Cyan" ? 204 : 1500, TopUpWhilePrinting = false })] };
        Run run = RunPlanner.Plan(Works.Request(press, Presses.Board() with { OnHand = 3 })).Value;
        Assert.Contains(run.SetUp.Refusals, r => r.Contains("4 boards are needed, 3 are on hand", StringComparison.Ordinal));
        IReadOnlyList<string> now = InkSupply.RefusalsNow(run, press);
        Assert.Contains(now, r => r.StartsWith("Cyan:", StringComparison.Ordinal));
        Assert.Equal((1, 2), (run.SetUp.Refusals.Count, now.Count));

        // Topped up since, nothing is held; what a run planned long ago says of the tanks of that day counts no more.
        Run old = run with { SetUp = run.SetUp with { Refusals = ["Cyan: 70 ml are needed and 4 ml can be used before the tank runs low. Top up first; it cannot be done while printing."] } };
        Assert.Empty(InkSupply.RefusalsNow(old, press with { Tanks = [.. press.Tanks.Select(t => t with { LevelMl = 1500 })] }));
        Assert.Contains("part the run", InkSupply.RefusalsNow(old, press with { Tanks = [.. press.Tanks.Select(t => t with { CapacityMl = 205, LevelMl = 204 })] })[0], StringComparison.Ordinal);
    }

    [Fact]
    public void What_speaks_against_one_stock_of_a_run_speaks_against_the_run()
    {
        RunRequest request = Works.Request(Presses.Hybrid(Presses.Mode("a")), Presses.Board());
        Stock curled = Presses.Board(bow: 40) with { Id = "curled", ThicknessMm = request.Stock.ThicknessMm / 2, Name = "Curled" }, meltable = Presses.Board() with { Id = "meltable", MaxTemperatureC = 26, Name = "Meltable" };
        Mode mode = request.Press.Modes[0];
        SetUp alone = SetUps.Of(request, mode, []), with = SetUps.Of(request with { Beside = [curled, meltable] }, mode, []);
        Assert.Empty(alone.Refusals);
        Assert.Contains(with.Refusals, r => r.Contains("Meltable may reach", StringComparison.Ordinal));
        Assert.True(with.HighestPointMm >= alone.HighestPointMm);
        Assert.Contains(ModeChooser.Choose(request.Press, request.Condition, request.InkSet, RunPlanner.DemandOf(request with { Beside = [meltable] })).Faults, f => f.ToString().Contains("Meltable may reach", StringComparison.Ordinal));
    }

    [Fact]
    public void A_crew_is_paid_all_the_time_and_a_second_person_only_for_lifting()
    {
        RunRequest request = Works.Request(Presses.Hybrid(Presses.Mode("a")), Presses.Board());
        RunTime Of(int? crew, Stock? stock = null) => RunTimes.Of(
            request with { Press = request.Press with { Costs = request.Press.Costs with { Crew = crew } }, Stock = stock ?? request.Stock }, request.Press.Modes[0]).Value;
        RunTime alone = Of(null);
        Assert.Null(alone.CrewMinutes);
        Assert.Equal(alone.TotalMinutes, alone.LabourMinutes);
        Assert.Equal(2 * alone.TotalMinutes, Of(2).LabourMinutes, 9);

        // A board of 1.22 m × 2.44 m is lifted by two: each is laid on and taken off once.
        PressCosts costs = request.Press.Costs;
        Assert.Equal(alone.TotalMinutes + (RunTimes.Goes(request) * (costs.LoadSeconds + costs.UnloadSeconds) / 60), Of(1).LabourMinutes, 9);
        Assert.Contains(Of(1).Figures, f => f.Name == "people at the press" && f.Because.Contains("a second who lifts", StringComparison.Ordinal));
        Assert.Equal(2 * Of(1).LabourMinutes, Of(1).Corrected(new("p", "m", "s", 2, 1, 3, 0.9, 5, 5, null, null, 0, "twice")).LabourMinutes, 9);
    }

    [Fact]
    public void Pieces_of_panels_count_as_their_first_panel_and_their_areas_add_up()
    {
        RunRequest request = Works.Request();
        Placement one = request.Sheets[0].Placements[0];
        request = request with { Sheets = [request.Sheets[0] with { Repeats = 1, Placements = [one with { PieceId = "X-1-1/1" }, one with { PieceId = "X-1-1/2" }, one with { PieceId = "X-1-11" }] }] };
        Assert.Equal(1, request.Pieces("X-1-1"));
        Assert.Equal(2 * 0.510 * 0.410, request.AreaM2("X-1-1"), 9);
    }

    [Fact]
    public void An_item_on_no_sheet_is_the_callers_mistake()
    {
        RunRequest request = Works.Request();
        Assert.Throws<ArgumentException>(() => RunPlanner.Plan(request with { Items = [.. request.Items, Works.Planned(Works.Item("X-9-9"))] }));
    }
}

public sealed class RunFormerLawTests
{
    private static readonly Mode Fine = Presses.Mode("a", quality: PrintQuality.High);
    private static readonly PressRoom Room = new(
        [Presses.Hybrid(Fine), Presses.Plain(Fine)], [Presses.Inks()], [Presses.Board(), Presses.Board(light: SheetLight.Clear) with { Id = "clear" }],
        [Presses.Condition("toy", "a") with { Id = "c1", StockIds = ["board", "clear"] }, Presses.Condition("plain", "a") with { Id = "c2" }]);

    [Fact]
    public void The_cheapest_press_that_can_is_chosen_and_the_other_is_named()
    {
        FormedRun run = Assert.Single(RunFormer.Form([Ready("X-1-1")], Room).Runs);
        Assert.Equal("plain", run.Press.Id);
        Assert.Contains(run.Because, b => b.StartsWith("Toy press could print it for", StringComparison.Ordinal));
    }

    [Fact]
    public void White_goes_to_the_press_that_has_it() => Assert.Equal("toy",
        Assert.Single(RunFormer.Form([Ready("X-1-1", Works.Simple with { White = WhiteSource.Flood, WhitePercent = 100 })], Room).Runs).Press.Id);

    [Fact]
    public void Orders_go_together_only_where_stock_stack_and_mode_agree()
    {
        FormedRuns formed = RunFormer.Form(
            [Ready("X-2-1"), Ready("X-1-1"), Ready("X-1-2", Works.Simple with { White = WhiteSource.Flood, WhitePercent = 100 }),
                Ready("X-3-1", Works.Simple with { SeenThroughSheet = true }, "clear"), Ready("X-3-2", stock: "clear")], Room);
        Assert.Equal(["X-1-1 X-2-1", "X-1-2", "X-3-1", "X-3-2"], formed.Runs.Select(r => string.Join(' ', r.Items.Select(i => i.Ready.Item.Id))).Order());
        Assert.Contains(formed.Runs.Single(r => r.Items.Count == 2).Because, b => b.Contains("2 items of 2 order(s)", StringComparison.Ordinal));
    }

    [Fact]
    public void The_order_of_the_items_does_not_matter()
    {
        ReadyItem[] items = [Ready("X-1-1"), Ready("X-2-1"), Ready("X-3-2", stock: "clear")];
        Assert.Equivalent(RunFormer.Form(items, Room), RunFormer.Form([.. items.Reverse()], Room), strict: true);
    }

    [Fact]
    public void An_item_no_press_can_print_comes_back_with_the_reason_of_each()
    {
        FormedRuns formed = RunFormer.Form([Ready("X-1-1", Works.Simple with { Lit = true }), Ready("X-1-2", stock: "slate")], Room);
        Assert.Empty(formed.Runs);
        Assert.Contains("opaque", formed.Unformed[0].Faults[0].Found, StringComparison.Ordinal);
        Assert.Contains("slate", formed.Unformed[1].Faults[0].Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(StockKind.Roll, 1000, 5000, 0.4, "takes boards only")]
    [InlineData(StockKind.Blank, 500, 400, 5, "has no lanes")]
    [InlineData(StockKind.Board, 1700, 4100, 5, "takes 1600 × 4000 mm")]
    [InlineData(StockKind.Board, 1000, 1000, 60, "clears 50 mm")]
    public void A_stock_the_press_cannot_take_is_said_so(StockKind kind, double width, double length, double thickness, string why) =>
        Assert.Contains(why, PressChooser.CannotTake(Room.Presses[1], Presses.Board() with { Kind = kind, WidthMm = width, LengthMm = length, ThicknessMm = thickness })!, StringComparison.Ordinal);

    private static ReadyItem Ready(string id, BuildWish? build = null, string stock = "board") =>
        new(Works.Item(id, build: build, stock: stock), id[..3], null, null);
}
