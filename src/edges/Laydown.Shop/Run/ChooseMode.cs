using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop.Layout;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>Takes another mode for a run than the one proposed, or gives it back to the shop's own rules.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">What it remembers.</param>
/// <param name="plan">Measures the ink of items and knows what times are corrected by.</param>
/// <param name="replace">Puts a run planned anew in the place of the one before.</param>
public sealed class ChooseMode(Catalogue catalogue, IShopStore store, PlanRuns plan, ReplaceRun replace)
{
    private const string FilesGone = "The mode was changed: press files and set-up sheet of the mode before no longer match and are gone.";

    /// <summary>Plans the run anew with the mode taken: time, ink, set-up sheet and cost follow; who took it and why stays with the run.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="overrule">The mode taken, by whom and why; null to go back to the mode the shop's own rules pick.</param>
    /// <param name="cancellation">Stops before anything is changed.</param>
    /// <returns>The run as it is now, or why not; then nothing was changed.</returns>
    public async Task<Reading<RunRecord>> ChooseAsync(string runId, ModeOverrule? overrule, CancellationToken cancellation)
    {
        IReadOnlyList<InputFault> words = [.. overrule is null ? [] : RunFaults.NameAndReason(runId, overrule.By.Trim(), overrule.Reason.Trim(), "this mode")];
        if (words.Count > 0)
            return Reading.Refused<RunRecord>(words);
        RunRecord? record = await store.RunAsync(runId, cancellation);
        if (record is null)
            return Refused(runId, "id", "no run of that id", "the id of a planned run");
        if ((ReplaceRun.Closed(record) ?? ReleaseLayout.Holding(record)) is { } closed)
            return Reading.Refused<RunRecord>(closed);

        IReadOnlyList<ItemRecord> items = [.. (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items)];
        Reading<RunContext> context = RunContexts.Gather(record.Run, catalogue, items, plan.Looks);
        if (!context.IsTaken)
            return Reading.Refused<RunRecord>(context.Faults);
        Reading<IReadOnlyList<PlannedItem>> measured = await PlanRuns.MeasureAsync(plan.Measure, context.Value, cancellation);
        Laydown.Plan.Log.EstimateModel? learnt = await plan.LearntAsync(cancellation);
        Reading<Laydown.Plan.Runs.Run> run = measured.Then(m => RunPlanner.Plan(Request(record.Run, context.Value, m, overrule) with { Learnt = learnt }))
            .Then(r => Reading.Of(r with { OnPress = record.Run.OnPress }));
        if (!run.IsTaken)
            return Reading.Refused<RunRecord>(run.Faults);
        Reading<RunContext> after = RunContexts.Gather(run.Value, catalogue, items, plan.Looks);
        if (!after.IsTaken)
            return Reading.Refused<RunRecord>(after.Faults);
        string hash = await RunContexts.HashAsync(after.Value, cancellation);

        // From here on nothing may be cut off half-way.
        cancellation.ThrowIfCancellationRequested();
        return await replace.ReplaceAsync(run.Value, hash, FilesGone, now => ReplaceRun.Closed(now) ?? ReleaseLayout.Holding(now) ?? RunFaults.Changed(now, record));
    }

    private RunRequest Request(Laydown.Plan.Runs.Run run, RunContext context, IReadOnlyList<PlannedItem> measured, ModeOverrule? overrule) => new(
        run.Id, context.Press, context.InkSet, context.Stock, context.Condition, catalogue.Rates, run.Stack, measured, run.Sheets, run.Belt)
    {
        Bands = BandScores.Of,
        Overrule = overrule,
        Beside = context.Beside,
        MinutesLeft = DueTimes.MinutesLeft(catalogue, run.Id, run.PressId, run.Due),
    };

    private static Reading<RunRecord> Refused(string runId, string field, string found, string wanted) => Reading.Refused<RunRecord>(RunFaults.Of(runId, field, found, wanted));
}
