using System.Text.Json.Nodes;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Colour;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Laydown.Shop.Week;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>A planned run is put on another press as a whole, with a name and a reason, or refused in words with nothing changed.</summary>
public sealed class TakePressLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();
    private readonly MakeRun make;

    public TakePressLawTests() => make = new(shop.Folder, shop.Catalogue, shop.Store, new ShopBench.FakeFiles(), shop.Board);

    public void Dispose()
    {
        make.Dispose();
        shop.Dispose();
    }

    [Fact]
    public async Task A_run_is_planned_anew_for_the_press_taken_and_stands_there_in_the_week()
    {
        RunRecord run = await MadeAsync();
        string other = Other(run);
        Heard told = new();
        WeekElsewhere tried = Assert.Single((await Week().ElsewhereAsync(run.Run.Id, told, None)).Value, e => e.PressId == other);
        Assert.NotNull(tried.Offer);
        DateTime at = new(shop.Clock.GetUtcNow().Year, shop.Clock.GetUtcNow().Month, shop.Clock.GetUtcNow().Day, 10, 0, 0, DateTimeKind.Unspecified);
        at = Enumerable.Range(1, 7).Select(d => at.AddDays(d)).First(d => d.DayOfWeek is DayOfWeek.Tuesday);
        WeekView week = (await Week().PutOnPressAsync(run.Run.Id, other, "Ada", "the other one stands", at, None)).Value;
        RunRecord now = (await shop.Store.RunAsync(run.Run.Id, None))!;

        Assert.Equal(shop.Catalogue.Presses.Where(p => p.Id != run.Run.PressId).Select((p, i) => new WeekTrying(run.Run.Id, p.Id, i, shop.Catalogue.Presses.Count - 1)), told.All);

        // The run is another one under the same id: press, condition, cost and files follow, and what was offered is what was taken.
        Assert.Equal(new PressTaken(other, run.Run.PressId, "Ada", "the other one stands"), now.Run.OnPress);
        Assert.Equal((other, RunState.Waiting), (now.Run.PressId, now.State));
        Assert.NotEqual(run.Run.ConditionId, now.Run.ConditionId);
        Assert.Equal((tried.Offer.ModeId, tried.Offer.Cost), (now.Run.Mode.ModeId, now.Run.Cost.Cost));
        Assert.False(Directory.Exists(Path.Combine(shop.Folder.Runs, run.Run.Id)));
        WeekRunView own = week.Runs.First(r => r.RunId == run.Run.Id);
        Assert.Equal((other, true), (own.PressId, own.Pinned));

        // It begins when it was put, or as soon as the care of its press before it, and then its own set-up, are done.
        Assert.True(own.Start.DateTime == at || (own.Start.DateTime > at && week.Care.Any(c => c.PressId == other && c.End == own.Start.AddMinutes(-own.SetUpMinutes))), Invariant($"{own.Start:O}: {string.Join(", ", week.Care)}"));

        // It is made for its press and knows itself to be whole; another mode keeps who took the press.
        Assert.Equal(RunState.Completed, (await make.MakeAsync(run.Run.Id, None)).Value.State);
        string mode = now.Run.Mode.Scores.First(s => s.ModeId != now.Run.Mode.ModeId && s.Points.All(p => p.Standing != ModeStanding.Out)).ModeId;
        ChooseMode choose = new(shop.Catalogue, shop.Store, Plan(), new(shop.Folder, shop.Store, make));
        Assert.Equal(now.Run.OnPress, (await choose.ChooseAsync(run.Run.Id, new(mode, "Bo", "as last year"), None)).Value.Run.OnPress);
        Assert.Equal(run.Run.PressId, (await Take().TakeAsync(run.Run.Id, run.Run.PressId, "Ada", "it works again", None)).Value.Run.PressId);
    }

    [Fact]
    public async Task Taken_back_a_run_is_planned_as_it_was_with_its_mode_taken_by_hand_and_stands_where_it_stood()
    {
        RunRecord made = await MadeAsync();
        string mode = made.Run.Mode.Scores.First(s => s.ModeId != made.Run.Mode.ModeId && s.Points.All(p => p.Standing != ModeStanding.Out)).ModeId;
        RunRecord before = (await new ChooseMode(shop.Catalogue, shop.Store, Plan(), new(shop.Folder, shop.Store, make)).ChooseAsync(made.Run.Id, new(mode, "Bo", "as last year"), None)).Value;
        LayerStack? stack = (await shop.Store.ItemAsync("TW-1-1", None))!.Stack;
        WeekRunView stood = (await Week().PlanAsync(None)).Value.Runs.First(r => r.RunId == made.Run.Id);
        WeekView moved = (await Week().PutOnPressAsync(made.Run.Id, Other(made), "Ada", "the other one stands", null, None)).Value;
        Assert.StartsWith(Invariant($"{made.Run.Id} goes back to {shop.Catalogue.Presses.First(p => p.Id == made.Run.PressId).Name}"), moved.BackWords, StringComparison.Ordinal);
        Assert.Equal(RunState.Completed, (await make.MakeAsync(made.Run.Id, None)).Value.State);

        WeekView back = (await Week().BackAsync(None)).Value;
        RunRecord now = (await shop.Store.RunAsync(made.Run.Id, None))!;
        Assert.Equal((before.InputHash, before.Run.PressId, mode, RunState.Waiting), (now.InputHash, now.Run.PressId, now.Run.Mode.ModeId, now.State));
        Assert.Equal(before.Run.Cost.Cost, now.Run.Cost.Cost);
        Assert.Null(now.Run.OnPress);
        Assert.Equal(stack!.Key, (await shop.Store.ItemAsync("TW-1-1", None))!.Stack!.Key);
        Assert.False(Directory.Exists(Path.Combine(shop.Folder.Runs, made.Run.Id)));
        Assert.Equal((stood.PressId, stood.Start), back.Runs.Where(r => r.RunId == made.Run.Id).Select(r => (r.PressId, r.Start)).Single());
        Assert.False(back.CanGoBack);
        Assert.Equal(RunState.Completed, (await make.MakeAsync(made.Run.Id, None)).Value.State);
    }

    [Fact]
    public async Task Taken_back_under_another_program_a_run_goes_by_its_inputs_and_what_differs_is_told_by_name()
    {
        RunRecord made = await MadeAsync();
        Assert.True((await Week().PutOnPressAsync(made.Run.Id, Other(made), "Ada", "the other one stands", null, None)).Value.CanGoBack);

        // As a program kept it that reckons hashes otherwise, knew a field that is gone and did not know one of today.
        string file = Path.Combine(Path.GetDirectoryName(shop.Folder.StoreFile)!, "week.json");
        JsonNode book = JsonNode.Parse(await File.ReadAllTextAsync(file, None))!;
        Assert.Equal(made.InputHash, (string?)book["moved"]!["before"]!["inputHash"]);
        book["moved"]!["before"]!["inputHash"] = new string('0', 64);
        JsonObject stock = book["moved"]!["inputs"]!["stock"]!.AsObject();
        Assert.True(stock.Remove("maxInkMlPerM2"));
        stock["shelfLifeDays"] = 90;
        await File.WriteAllTextAsync(file, book.ToJsonString(), None);

        ItemRecord item = (await shop.Store.ItemAsync("TW-1-1", None))!;
        await shop.Store.SaveItemsAsync([item with { Artwork = item.Artwork! with { Sha256 = new('9', 64) } }], None);
        InputFault fault = Assert.Single((await Week().BackAsync(None)).Faults);
        Assert.Equal(("run", Invariant($"another than it was planned from there: items 1 sha256 999999999999… in place of {item.Artwork!.Sha256[..12]}…")), (fault.Field, fault.Found));
        Assert.Equal(Other(made), (await shop.Store.RunAsync(made.Run.Id, None))!.Run.PressId);

        await shop.Store.SaveItemsAsync([item], None);
        Assert.True((await Week().BackAsync(None)).IsTaken);
        RunRecord now = (await shop.Store.RunAsync(made.Run.Id, None))!;
        Assert.Equal((made.Run.PressId, made.InputHash), (now.Run.PressId, now.InputHash));
    }

    [Fact]
    public async Task A_change_of_press_is_not_taken_back_over_a_later_change_of_the_run()
    {
        RunRecord made = await MadeAsync();
        Assert.True((await Week().PutOnPressAsync(made.Run.Id, Other(made), "Ada", "the other one stands", null, None)).Value.CanGoBack);
        RunRecord there = (await shop.Store.RunAsync(made.Run.Id, None))!;
        string mode = there.Run.Mode.Scores.First(s => s.ModeId != there.Run.Mode.ModeId && s.Points.All(p => p.Standing != ModeStanding.Out)).ModeId;
        RunRecord later = (await new ChooseMode(shop.Catalogue, shop.Store, Plan(), new(shop.Folder, shop.Store, make)).ChooseAsync(made.Run.Id, new(mode, "Bo", "as last year"), None)).Value;

        InputFault fault = Assert.Single((await Week().BackAsync(None)).Faults);
        Assert.Equal(("run", "one that was changed since it was put on that press"), (fault.Field, fault.Found));
        Assert.Equal(later.InputHash, (await shop.Store.RunAsync(made.Run.Id, None))!.InputHash);
    }

    [Fact]
    public async Task The_ink_of_a_piece_is_measured_once_for_a_press_that_is_tried_and_then_taken()
    {
        RunRecord made = await MadeAsync();
        Counted measure = new();
        TakePress take = new(shop.Catalogue, shop.Store, new PlanRuns(shop.Catalogue, shop.Store, measure), new(shop.Folder, shop.Store, make));
        await take.TryAsync(made.Run.Id, Other(made), None);
        await take.TryAsync(made.Run.Id, Other(made), None);
        Assert.True((await take.TakeAsync(made.Run.Id, Other(made), "Ada", "the other one stands", None)).IsTaken);
        Assert.Equal(1, measure.Times);

        // Another picture under the same name is measured anew.
        ItemRecord item = (await shop.Store.ItemAsync("TW-1-1", None))!;
        await shop.Store.SaveItemsAsync([item with { Artwork = item.Artwork! with { Sha256 = new('0', 64) } }], None);
        await take.TryAsync(made.Run.Id, made.Run.PressId, None);
        await take.TryAsync(made.Run.Id, made.Run.PressId, None);
        Assert.Equal(2, measure.Times);
    }

    [Fact]
    public async Task What_cannot_be_changes_nothing_and_is_told_by_field()
    {
        RunRecord run = await MadeAsync();
        string other = Other(run);
        Assert.Equal(["by", "reason"], (await Take().TakeAsync(run.Run.Id, other, " ", "no", None)).Faults.Select(f => f.Field));
        Assert.Equal("press", Assert.Single((await Take().TakeAsync(run.Run.Id, run.Run.PressId, "Ada", "because", None)).Faults).Field);
        Assert.Equal("press", Assert.Single((await Take().TakeAsync(run.Run.Id, "none", "Ada", "because", None)).Faults).Field);
        Assert.Equal("id", Assert.Single((await Take().TryAsync("R-none", other, None)).Faults).Field);
        Assert.Equal("at", Assert.Single((await Week().PutOnPressAsync(run.Run.Id, other, "Ada", "because", new(2001, 1, 1), None)).Faults).Field);
        RunRecord now = (await shop.Store.RunAsync(run.Run.Id, None))!;
        Assert.Equal((run.InputHash, RunState.Completed), (now.InputHash, now.State));
        Assert.True(Directory.Exists(Path.Combine(shop.Folder.Runs, run.Run.Id)));
    }

    [Fact]
    public async Task A_stock_too_thick_for_the_press_is_refused_with_both_measures()
    {
        RunRecord run = await MadeAsync();
        string other = Other(run);
        Catalogue thin = shop.Catalogue with { Presses = [.. shop.Catalogue.Presses.Select(p => p.Id == other ? p with { MaxThicknessMm = 1 } : p)] };
        TakePress take = new(thin, shop.Store, new PlanRuns(thin, shop.Store, new ShopBench.FakeMeasure()), new(shop.Folder, shop.Store, make));
        InputFault fault = Assert.Single((await take.TryAsync(run.Run.Id, other, None)).Faults);
        Assert.Contains("mm thick", fault.Found, StringComparison.Ordinal);
        Assert.Contains("clears 1 mm", fault.Found, StringComparison.Ordinal);
    }

    private PlanRuns Plan() => new(shop.Catalogue, shop.Store, new ShopBench.FakeMeasure());

    private TakePress Take() => new(shop.Catalogue, shop.Store, Plan(), new(shop.Folder, shop.Store, make));

    private PlanWeek Week() => new(shop.Folder, shop.Catalogue, shop.Store, null, shop.Clock, Take());

    private string Other(RunRecord run) => shop.Catalogue.Presses.First(p => p.Id != run.Run.PressId).Id;

    private sealed class Heard : IProgress<WeekTrying>
    {
        public List<WeekTrying> All { get; } = [];

        public void Report(WeekTrying value) => All.Add(value);
    }

    private sealed class Counted : IInkMeasure
    {
        private readonly ShopBench.FakeMeasure inner = new();

        public int Times { get; private set; }

        public Task<Reading<IReadOnlyList<LayerInk>>> MeasureAsync(ItemRecord item, PrintCondition condition, InkSet inkSet, string profilePath, CancellationToken cancellation)
        {
            Times++;
            return inner.MeasureAsync(item, condition, inkSet, profilePath, cancellation);
        }
    }

    private async Task<RunRecord> MadeAsync()
    {
        shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1")));
        return Assert.Single((await DayLawTests.WorkAsync(shop)).Runs);
    }
}
