using Laydown.Layout.Hands;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop.Run;

namespace Laydown.Shop.Layout;

/// <summary>Gives a run another layout: as a whole or not at all.</summary>
/// <param name="open">Opens layouts.</param>
/// <param name="requests">Makes the request a run is planned from.</param>
/// <param name="replace">Puts a run planned anew in the place of the one before.</param>
public sealed class SaveLayout(OpenLayout open, RunRequests requests, ReplaceRun replace)
{
    /// <summary>What the run says of its press files after its layout was changed.</summary>
    public const string FilesGone = "The layout was changed by hand: press files and set-up sheet of the layout before no longer match and are gone.";

    /// <summary>
    /// Plans the run anew around the layout and saves it: time, ink, set-up sheet and cost follow. Press files of the layout before leave the run's
    /// folder first, so that nobody prints from them; they are made again as those of any run.
    /// </summary>
    /// <param name="runId">The run.</param>
    /// <param name="mark">Mark of the layout the change began with.</param>
    /// <param name="sheets">The layout.</param>
    /// <param name="measured">The run's items with their ink.</param>
    /// <param name="cancellation">Stops before anything is changed.</param>
    /// <returns>The run as it is now, or why the layout was not saved; then nothing was changed.</returns>
    public async Task<Reading<RunRecord>> SaveAsync(
        string runId, string mark, IReadOnlyList<HandSheet> sheets, IReadOnlyList<PlannedItem> measured, CancellationToken cancellation)
    {
        Reading<OpenedLayout> opened = await open.OpenAsync(runId, cancellation);
        Reading<(OpenedLayout Opened, Laydown.Plan.Runs.Run Run)> planned = opened.Then(o => HandSheets.Read(sheets, o.Rules)
            .Then(read => Plan(o, mark, read, measured)).Then(run => Reading.Of((o, run))));
        if (!planned.IsTaken)
            return Reading.Refused<RunRecord>(planned.Faults);
        string hash = await RunContexts.HashAsync(planned.Value.Opened.Context with { Run = planned.Value.Run }, cancellation);

        // From here on nothing may be cut off half-way.
        cancellation.ThrowIfCancellationRequested();
        return await replace.ReplaceAsync(planned.Value.Run, hash, FilesGone, now => Refusal(now, mark));
    }

    private Reading<Laydown.Plan.Runs.Run> Plan(OpenedLayout opened, string mark, IReadOnlyList<HandSheet> sheets, IReadOnlyList<PlannedItem> measured)
    {
        if (Refusal(opened.Record, mark) is { } refusal)
            return Reading.Refused<Laydown.Plan.Runs.Run>(refusal);
        IReadOnlyList<InputFault> stops = [.. LayoutConflicts.Of(sheets, opened.Rules).Where(c => c.Severity == Severity.Stop).Take(20)
            .Select(c => new InputFault(Invariant($"run {opened.Record.Run.Id}"), null, c.Sheet < 0 ? "layout" : Invariant($"sheet {c.Sheet + 1}"), c.Words().TrimEnd('.'), "a layout without stops"))];
        if (stops.Count > 0)
            return Reading.Refused<Laydown.Plan.Runs.Run>(stops);
        IReadOnlyList<SheetLayout> layouts = opened.LayoutsOf(HandSheets.Tidy(sheets));
        return requests.Of(opened, layouts, measured).Then(RunPlanner.Plan).Then(r => Reading.Of(r with { OnPress = opened.Record.Run.OnPress }));
    }

    private static InputFault? Refusal(RunRecord record, string mark) => record.State switch
    {
        _ when ReplaceRun.Closed(record) is { } closed => closed,
        _ => ReleaseLayout.Holding(record) ?? (string.Equals(LayoutMark.Of(record.Run.Sheets), mark, StringComparison.Ordinal) ? null : Changed(record.Run.Id)),
    };

    private static InputFault Changed(string runId) =>
        new(Invariant($"run {runId}"), null, "mark", "a layout that was changed meanwhile", "the layout this change began with; load the page again");
}
