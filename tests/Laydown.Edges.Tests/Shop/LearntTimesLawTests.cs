using Laydown.Plan.Log;
using Laydown.Plan.Runs;
using Laydown.Shop.Layout;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Laydown.Shop.Week;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>What the log says of times holds wherever a run's time is made: taken by hand, laid out by hand, in the week, in a quote; and nowhere where the shop does not use it.</summary>
public sealed class LearntTimesLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();
    private readonly MakeRun make;

    public LearntTimesLawTests() => make = new(shop.Folder, shop.Catalogue, shop.Store, new ShopBench.FakeFiles(), shop.Board);

    private Catalogue Learning => shop.Catalogue with { Rates = shop.Catalogue.Rates with { Policy = (shop.Catalogue.Rates.Policy ?? new()) with { UseLearntTimes = true } } };

    public void Dispose()
    {
        make.Dispose();
        shop.Dispose();
    }

    [Fact]
    public async Task A_mode_taken_by_hand_takes_the_time_of_the_mode_times_what_the_log_says_of_it()
    {
        Laydown.Plan.Runs.Run run = await RunAsync();
        string other = run.Mode.Scores.First(s => s.ModeId != run.Mode.ModeId && s.Points.All(p => p.Standing != ModeStanding.Out)).ModeId;
        RunTime plain = (await Mode(shop.Catalogue, run).ChooseAsync(run.Id, new(other, "Ada", "as last year"), None)).Value.Run.Time;
        RunTime learnt = (await Mode(Learning, run).ChooseAsync(run.Id, new(other, "Ada", "as last year"), None)).Value.Run.Time;
        Holds(plain, learnt, await Log(run).MinutesAsync(None), run, other);
        Assert.Contains("no run of this press, mode and stock yet", learnt.LearntWords, StringComparison.Ordinal);
        Assert.Null(plain.LearntWords);
    }

    [Fact]
    public async Task A_layout_made_by_hand_takes_the_corrected_time_and_says_from_how_many_runs_and_so_does_its_cost_before()
    {
        Laydown.Plan.Runs.Run run = await RunAsync();
        double reckoned = run.Time.TotalMinutes;
        OpenedLayout opened = (await new OpenLayout(Learning, shop.Store, Plans(Learning, run)).OpenAsync(run.Id, None)).Value;
        IReadOnlyList<PlannedItem> measured = (await new MeasureLayout(new ShopBench.FakeMeasure()).MeasureAsync(opened, None)).Value;
        LayoutCost cost = new JudgeLayout(new(Learning)).Judge(opened, opened.Sheets, measured).Cost!;
        SaveLayout save = new(new(Learning, shop.Store, Plans(Learning, run)), new(Learning), new(shop.Folder, shop.Store, make));
        RunTime saved = (await save.SaveAsync(run.Id, opened.Mark, opened.Sheets, measured, None)).Value.Run.Time;

        Holds(run.Time, saved, await Log(run).MinutesAsync(None), run, run.Mode.ModeId);
        Assert.Equal(saved.TotalMinutes, cost.Minutes, 1e-9);
        Assert.NotEqual(reckoned, saved.TotalMinutes, 1);
        Assert.EndsWith("from 8 runs of this press, mode and stock.", saved.LearntWords, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_week_gives_a_run_its_corrected_time_and_says_so()
    {
        Laydown.Plan.Runs.Run run = await RunAsync();
        WeekRunView plain = Assert.Single((await Week(shop.Catalogue).PlanAsync(None)).Value.Runs);
        RunTime time = (await Mode(Learning, run).ChooseAsync(run.Id, null, None)).Value.Run.Time;
        WeekRunView learnt = Assert.Single((await Week(Learning).PlanAsync(None)).Value.Runs);
        Assert.Equal(Math.Ceiling(time.PrintMinutes + time.HandlingMinutes - 1e-9), (learnt.End - learnt.Start).TotalMinutes);
        Assert.True(learnt.End - learnt.Start > plain.End - plain.Start);
        Assert.Equal((null, time.LearntWords), (plain.TimeWords, learnt.TimeWords));
    }

    [Fact]
    public async Task Breaks_and_ways_of_a_quote_are_priced_with_corrected_times_and_say_so()
    {
        Laydown.Plan.Runs.Run run = await RunAsync();
        (QuoteBreak plain, QuoteScenario plainAlone) = await QuotedAsync(shop.Catalogue, run);
        (QuoteBreak learnt, QuoteScenario learntAlone) = await QuotedAsync(Learning, run);
        double factor = (await Log(run).MinutesAsync(None)).For(run.PressId, run.Mode.ModeId, run.StockId).Factor;
        Assert.Equal(plain.Minutes * factor, learnt.Minutes, 1e-9);
        Assert.Equal(plainAlone.Minutes * factor, learntAlone.Minutes, 1e-9);
        Assert.True(learnt.Price!.Value.Units > plain.Price!.Value.Units);
        Assert.Contains("corrected by the log", learnt.Because, StringComparison.Ordinal);
        Assert.Contains("corrected by the log", learntAlone.Because, StringComparison.Ordinal);
        Assert.DoesNotContain("corrected by the log", plain.Because + plainAlone.Because, StringComparison.Ordinal);
    }

    private static void Holds(RunTime plain, RunTime learnt, EstimateModel model, Laydown.Plan.Runs.Run run, string mode)
    {
        EstimateCorrection correction = model.For(run.PressId, mode, run.StockId);
        Assert.True(correction.Factor > 1.2, "Runs that took half as long again are not seen.");
        Assert.Equal(plain.TotalMinutes * correction.Factor, learnt.TotalMinutes, 1e-9);
        Assert.Equal((correction.Factor, correction.Runs), (learnt.LearntFactor, learnt.LearntRuns));
        Assert.Null(plain.LearntFactor);
    }

    // Eight runs like this one took half as long again.
    private static LearnEstimates Log(Laydown.Plan.Runs.Run like) => new(new DoneRuns([.. Enumerable.Range(0, 8).Select(i => new RunActual(
        Invariant($"R-{i}"), DateTimeOffset.UnixEpoch.AddHours(i), DateTimeOffset.UnixEpoch.AddHours(i + 1), 9, 1, like.PressId, like.Mode.ModeId, like.StockId, new(2026, 1, 1),
        60 + i, 40 + (i * 2.0 / 3), null, 0, 1, 1))]));

    private PlanRuns Plans(Catalogue catalogue, Laydown.Plan.Runs.Run like) => new(catalogue, shop.Store, new ShopBench.FakeMeasure(), null, Log(like));

    private ChooseMode Mode(Catalogue catalogue, Laydown.Plan.Runs.Run like) => new(catalogue, shop.Store, Plans(catalogue, like), new(shop.Folder, shop.Store, make));

    private PlanWeek Week(Catalogue catalogue) => new(shop.Folder, catalogue, shop.Store, null, shop.Clock);

    private async Task<(QuoteBreak Break, QuoteScenario Alone)> QuotedAsync(Catalogue catalogue, Laydown.Plan.Runs.Run like)
    {
        TryOrder trying = new(catalogue, shop.Store, new ShopBench.FakeMeasure(), null, Log(like));
        return ((await trying.BreaksAsync(like.Items[0].OrderId, [3], None)).Value[0].Breaks[0],
            (await trying.CompareAsync(like.Items[0].OrderId, [], None)).Value.First(s => s.Name == "by itself"));
    }

    private async Task<Laydown.Plan.Runs.Run> RunAsync()
    {
        shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1")));
        return Assert.Single((await DayLawTests.WorkAsync(shop)).Runs).Run;
    }
}
