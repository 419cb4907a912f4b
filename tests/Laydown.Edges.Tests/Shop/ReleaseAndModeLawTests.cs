using Laydown.Plan.Runs;
using Laydown.Press.Stocks;
using Laydown.Measures;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>A made run is let go by two people, and planned anew where somebody takes another mode: whole or not at all.</summary>
public sealed class ReleaseAndModeLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();
    private readonly MakeRun make;

    public ReleaseAndModeLawTests() => make = new(shop.Folder, shop.Catalogue, shop.Store, new ShopBench.FakeFiles(), shop.Board);

    public void Dispose()
    {
        make.Dispose();
        shop.Dispose();
    }

    [Fact]
    public async Task A_release_stays_with_the_run_until_it_is_taken_back()
    {
        RunRecord run = await MadeAsync();
        RunRecord released = (await Release().ReleaseAsync(run.Run.Id, Sound(run), None)).Value;
        Assert.Equal(shop.Clock.GetUtcNow(), released.LetGo!.At);
        Assert.Equal(released.LetGo.HeadGap, (await shop.Store.RunAsync(run.Run.Id, None))!.LetGo!.HeadGap);
        Assert.Equal(RunState.Completed, (await make.MakeAsync(run.Run.Id, None)).Value.State);
        Assert.NotNull((await shop.Store.RunAsync(run.Run.Id, None))!.LetGo);

        Assert.Null((await Release().TakeBackAsync(run.Run.Id, None)).Value.LetGo);
        Assert.Equal("release", Assert.Single((await Release().TakeBackAsync(run.Run.Id, None)).Faults).Field);
    }

    [Fact]
    public async Task Nothing_is_released_that_is_not_made_not_there_or_measured_wrongly()
    {
        RunRecord run = await MadeAsync();
        Assert.Equal("id", Assert.Single((await Release().ReleaseAsync("R-1", Sound(run), None)).Faults).Field);
        Assert.Equal("checkedBy", Assert.Single((await Release().ReleaseAsync(run.Run.Id, Sound(run) with { CheckedBy = "Ada" }, None)).Faults).Field);
        await shop.Store.SaveRunsAsync([run with { State = RunState.Waiting, Files = [] }], ItemState.Planned, None);
        Assert.Equal("state", Assert.Single((await Release().ReleaseAsync(run.Run.Id, Sound(run), None)).Faults).Field);
        Assert.Null((await shop.Store.RunAsync(run.Run.Id, None))!.LetGo);
    }

    [Fact]
    public async Task Another_mode_plans_the_run_anew_and_takes_files_and_release_with_it_and_back_again()
    {
        RunRecord run = await MadeAsync();
        string proposed = run.Run.Mode.ModeId, other = Other(run);
        await Release().ReleaseAsync(run.Run.Id, Sound(run), None);
        RunRecord taken = (await Mode().ChooseAsync(run.Run.Id, new(other, "Ada", "as last year"), None)).Value;
        Assert.Equal((other, proposed, RunState.Waiting), (taken.Run.Mode.ModeId, taken.Run.Mode.ProposedId, taken.State));
        Assert.Null(taken.LetGo);
        Assert.Empty(taken.Files);
        Assert.False(Directory.Exists(Path.Combine(shop.Folder.Runs, run.Run.Id)));
        Assert.NotEqual(run.Run.Time.PrintMinutes, taken.Run.Time.PrintMinutes);
        Assert.NotEqual(run.InputHash, taken.InputHash);

        RunRecord back = (await Mode().ChooseAsync(run.Run.Id, null, None)).Value;
        Assert.Equal((proposed, run.InputHash), (back.Run.Mode.ModeId, back.InputHash));
    }

    [Fact]
    public async Task A_mode_nobody_has_or_without_a_reason_changes_nothing()
    {
        RunRecord run = await MadeAsync();
        Assert.Equal(["by", "reason"], (await Mode().ChooseAsync(run.Run.Id, new(Other(run), " ", "no"), None)).Faults.Select(f => f.Field));
        Assert.Equal("mode none", Assert.Single((await Mode().ChooseAsync(run.Run.Id, new("none", "Ada", "because"), None)).Faults).Field);
        RunRecord now = (await shop.Store.RunAsync(run.Run.Id, None))!;
        Assert.Equal((run.InputHash, RunState.Completed), (now.InputHash, now.State));
        Assert.True(Directory.Exists(Path.Combine(shop.Folder.Runs, run.Run.Id)));
    }

    private ReleaseRun Release() => new(shop.Catalogue, shop.Store, make, shop.Clock);

    private ChooseMode Mode() => new(shop.Catalogue, shop.Store, new PlanRuns(shop.Catalogue, shop.Store, new ShopBench.FakeMeasure()), new(shop.Folder, shop.Store, make));

    private static string Other(RunRecord run) => run.Run.Mode.Scores.First(s => s.ModeId != run.Run.Mode.ModeId && s.Points.All(p => p.Standing != ModeStanding.Out)).ModeId;

    private MeasuredSheet Sound(RunRecord run)
    {
        Stock stock = shop.Catalogue.Stocks.First(s => s.Id == run.Run.StockId);
        double mm = stock.ThicknessMm;
        return new([mm, mm, mm, mm, mm], 0.1, "Ada", "Bo", mm, true);
    }

    private async Task<RunRecord> MadeAsync()
    {
        shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1")));
        return Assert.Single((await DayLawTests.WorkAsync(shop)).Runs);
    }
}
