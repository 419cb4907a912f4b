using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Plan.Runs;
using Laydown.Plan.Upkeep;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Shop.Orders;
using Laydown.Shop.Press;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>One level for each tank, whoever asks: the last that was read at the press or in the log, with what was poured.</summary>
public sealed class PressLevelsLawTests : IDisposable
{
    private const string Press = "long-belt";
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();
    private readonly CareBench care = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task The_later_of_a_reading_at_the_press_and_one_in_the_log_holds()
    {
        Assert.Equal((1710.0, null), await LevelAsync("C"));
        await WriteAsync(new([new("C", 900)]));
        Assert.Equal((900.0, shop.Clock.GetUtcNow()), await LevelAsync("C"));

        care.Ink.Add(Logged("C", 950, shop.Clock.GetUtcNow().AddHours(-1)));
        Assert.Equal(900, (await LevelAsync("C")).Ml);
        care.Ink.Add(Logged("C", 820, shop.Clock.GetUtcNow().AddHours(1)));
        shop.Clock.Advance(TimeSpan.FromHours(2));
        Assert.Equal(820, (await LevelAsync("C")).Ml);

        // Care that was done reads no tank: the level of the log stays the later one.
        await WriteAsync(new(Done: ["lamps"]));
        Assert.Equal(820, (await LevelAsync("C")).Ml);
        Assert.Equal(820, (await UpkeepAsync()).State.Tanks.Single(t => t.TankId == "C").LevelMl);
    }

    [Fact]
    public async Task Ink_poured_from_the_shelf_is_in_the_tank_and_no_more_on_the_shelf()
    {
        await WriteAsync(new([new("C", 500, "OLD", new(2027, 6, 30))], Packs: [new("L-7", InkRole.Cyan, 2000, new(2027, 3, 31), "cellar"), new("L-8", InkRole.Cyan, 1000, new(2027, 9, 30))]));
        PressCarePage page = await WriteAsync(new(FromShelf: [new("C", "L-7", 1000)]));
        TankState tank = page.State.Tanks.Single(t => t.TankId == "C");
        Assert.Equal((1500.0, "L-7", new DateOnly(2027, 3, 31)), (tank.LevelMl, tank.Lot, tank.Expires));
        Assert.Equal([1000.0, 1000.0], page.Packs.Select(p => p.Ml));

        // A lot that keeps longer does not put off the last day of what it is poured into; an empty lot goes.
        page = await WriteAsync(new(FromShelf: [new("C", "L-8", 500), new("C", "L-7", 400)]));
        Assert.Equal((2400.0, "L-7", new DateOnly(2027, 3, 31)), (page.State.Tanks[0].LevelMl, page.State.Tanks[0].Lot, page.State.Tanks[0].Expires));
        Assert.Equal([600.0, 500.0], page.Packs.Select(p => p.Ml));
    }

    [Fact]
    public async Task A_level_that_is_read_alone_keeps_lot_and_last_day()
    {
        await WriteAsync(new([new("C", 500, "OLD", new(2027, 6, 30))]));
        TankState tank = (await WriteAsync(new([new("C", 450)]))).State.Tanks[0];
        Assert.Equal(("OLD", new DateOnly(2027, 6, 30)), (tank.Lot, tank.Expires));
        tank = (await WriteAsync(new([new("C", 450, "")]))).State.Tanks[0];
        Assert.Equal((null, null), (tank.Lot, tank.Expires));
    }

    [Fact]
    public async Task What_cannot_be_poured_or_stand_on_a_shelf_is_refused_by_name_and_nothing_is_written()
    {
        await WriteAsync(new([new("C", 2300)], Packs: [new("L-7", InkRole.Cyan, 2000, new(2027, 3, 31)), new("L-1", InkRole.Cyan, 500, new(2026, 11, 24)), new("L-9", InkRole.Magenta, 500)]));
        await RefusedAsync(new(FromShelf: [new("C", "L-7", 150)]), "/tanks/0/levelMl");
        await RefusedAsync(new(FromShelf: [new("C", "L-1", 50)]), "/fromShelf/0/lot");
        await RefusedAsync(new(FromShelf: [new("C", "L-9", 50)]), "/fromShelf/0/lot");
        await RefusedAsync(new(FromShelf: [new("C", "L-7", 1500), new("M", "L-7", 50)]), "/fromShelf/1/lot");
        await RefusedAsync(new(FromShelf: [new("C", "L-7", 2001)]), "/fromShelf/0/ml");
        await RefusedAsync(new(FromShelf: [new("C", "L-7", double.NaN)]), "/fromShelf/0/ml");
        await RefusedAsync(new(FromShelf: [new("Q", "L-7", 5)]), "/fromShelf/0/tankId");
        await RefusedAsync(new(Packs: [new(" ", InkRole.Cyan, 5)]), "/packs/0/lot");
        await RefusedAsync(new(Packs: [new("A", InkRole.Cyan, -5)]), "/packs/0/ml");
        await RefusedAsync(new(Packs: [new("A", InkRole.Cyan, 5), new("A", InkRole.Cyan, 6)]), "/packs/1/lot");
        await RefusedAsync(new(Packs: [], Shelf: "another"), "/shelf");
        Assert.Equal((2300.0, 3), ((await LevelAsync("C")).Ml, (await care.ReadAsync(Press, None))!.Packs.Count));
    }

    [Fact]
    public async Task A_run_that_lacked_ink_is_held_till_the_tank_is_topped_up_and_written_down()
    {
        PressDescription press = shop.Catalogue.Presses.Single(p => p.Id == Press);
        Laydown.Plan.Runs.Run run = Samples.Run("R-1", "I-1") with { Inks = [new(InkRole.White, ["W1", "W2"], 2000, 20, 80)] };
        TankLevels levels = new(care, care);
        Assert.StartsWith("White: 2020 ml are needed and 1650 ml", Assert.Single(InkSupply.RefusalsNow(run, await levels.AsReadAsync(press, None)).Except(run.SetUp.Refusals)), StringComparison.Ordinal);
        await WriteAsync(new([new("W", 3400)]));
        Assert.Empty(InkSupply.RefusalsNow(run, await levels.AsReadAsync(press, None)).Except(run.SetUp.Refusals));
    }

    [Fact]
    public async Task A_run_that_the_log_says_is_done_takes_no_ink_again_and_ends_no_stop()
    {
        Laydown.Plan.Runs.Run run = Samples.Run("R-1", "I-1") with { PressId = Press };
        await shop.Store.SaveOrderAsync(Samples.OrderRecord("TW-9001", Samples.ItemRecord("I-1", ItemState.Planned, runId: "R-1")), None);
        await shop.Store.SaveRunsAsync([Samples.RunRecord("R-1", RunState.Completed, "I-1") with { Run = run }], ItemState.Planned, None);
        Assert.NotEmpty((await UpkeepAsync()).Uses);
        DateTimeOffset ended = shop.Clock.GetUtcNow().AddHours(-30);
        care.Done.Add(new("R-1", ended.AddHours(-1), ended, 1, 0, Press, "m", "s", run.Due, 60, 60, null, 10, 1, 1));
        UpkeepRequest now = await UpkeepAsync();
        Assert.Empty(now.Uses);
        Assert.Equal(ended, now.State.LastUsed);
        Assert.Equal(ended, UpkeepPlanner.Plan(now).Value.LongStops[0].Start);
    }

    private ReadPress Read() => new(shop.Catalogue, care, shop.Clock, new(care, care));

    private async Task<PressCarePage> WriteAsync(PressReading reading) => (await Read().WriteAsync(Press, reading, None)).Value;

    private async Task RefusedAsync(PressReading reading, string field) => Assert.Equal(field, (await Read().WriteAsync(Press, reading, None)).Faults[0].Field);

    private async Task<(double Ml, DateTimeOffset? At)> LevelAsync(string tank)
    {
        PressDescription press = shop.Catalogue.Presses.Single(p => p.Id == Press);
        ReadTank read = (await new TankLevels(care, care).OfAsync(press, None)).Single(t => t.TankId == tank);
        return (read.LevelMl, read.At);
    }

    private async Task<UpkeepRequest> UpkeepAsync() =>
        (await new PlanUpkeep(shop.Catalogue, shop.Store, care, null, new(care, care), care).RequestAsync(Press, shop.Clock.GetUtcNow(), 14, None)).Value;

    private static LogEntry Logged(string tank, double ml, DateTimeOffset at) => new(1, at, LogKind.Ink, null, Press, Ink: new TankReading(tank, ml));
}
