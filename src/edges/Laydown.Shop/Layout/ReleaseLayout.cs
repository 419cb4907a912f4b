using Laydown.Layout.Hands;
using Laydown.Measures;
using Laydown.Shop.Orders;
using Laydown.Shop.Press;
using Laydown.Shop.Run;

namespace Laydown.Shop.Layout;

/// <summary>Releases the layout of a run to the press, and takes the release back.</summary>
/// <param name="catalogue">Names who may.</param>
/// <param name="store">What the shop remembers.</param>
/// <param name="open">Opens layouts.</param>
/// <param name="makeRun">Knows whether the run is being made.</param>
/// <param name="supply">Tells whether the stock room holds what a run takes; null to believe what was found when it was planned.</param>
public sealed class ReleaseLayout(Catalogue catalogue, IShopStore store, OpenLayout open, MakeRun makeRun, SupplyOfRun? supply = null)
{
    /// <summary>Longest name, characters.</summary>
    public const int MostName = 100;

    /// <summary>Who may release a layout and take a release back; empty for anybody who gives a name.</summary>
    public IReadOnlyList<string> WhoMay => catalogue.Releasers;

    /// <summary>Releases it: from now on it is not changed.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="mark">Mark of the layout that was looked at.</param>
    /// <param name="by">Who.</param>
    /// <param name="at">When.</param>
    /// <param name="cancellation">Stops before anything is changed.</param>
    /// <returns>The run, or why it is not released: a conflict, a set-up that must not be released, another layout than the one looked at, a name that may not.</returns>
    public async Task<Reading<RunRecord>> ReleaseAsync(string runId, string mark, string? by, DateTimeOffset at, CancellationToken cancellation)
    {
        if (Named(runId, by) is { } nobody)
            return Reading.Refused<RunRecord>(nobody);
        Reading<OpenedLayout> opened = await open.OpenAsync(runId, cancellation);
        if (!opened.IsTaken)
            return Reading.Refused<RunRecord>(opened.Faults);
        if (opened.Value.Closed is { } closed)
            return Reading.Refused<RunRecord>(closed);
        Laydown.Plan.Runs.Run now = supply is null ? opened.Value.Record.Run : await supply.AsNowAsync(opened.Value.Record.Run, cancellation);
        IReadOnlyList<InputFault> stops = [.. LayoutConflicts.Of(opened.Value.Sheets, opened.Value.Rules).Where(c => c.Severity == Severity.Stop).Take(20)
            .Select(c => RunFaults.Of(runId, c.Sheet < 0 ? "layout" : Invariant($"sheet {c.Sheet + 1}"), c.Words().TrimEnd('.'), "a layout without stops")),
            .. now.SetUp.Refusals.Select(r => RunFaults.Of(runId, "set-up", r.TrimEnd('.'), "a set-up that may be released"))];
        if (stops.Count > 0)
            return Reading.Refused<RunRecord>(stops);
        return await ChangeAsync(runId, record => LayoutMark.Of(record.Run.Sheets) == mark
            ? Reading.Of(record with { Release = new(by!.Trim(), at, mark) })
            : Reading.Refused<RunRecord>(RunFaults.Of(runId, "mark", "a layout that was changed meanwhile", "the layout that was looked at; load the page again")));
    }

    /// <summary>Takes a release back: the layout may be changed again.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="by">Who.</param>
    /// <param name="at">When.</param>
    /// <returns>The run, or why not: it is not released, or a name that may not.</returns>
    public async Task<Reading<RunRecord>> TakeBackAsync(string runId, string? by, DateTimeOffset at) => Named(runId, by) is { } nobody
        ? Reading.Refused<RunRecord>(nobody)
        : await ChangeAsync(runId, record => record.Release is { Holds: true } release
            ? Reading.Of(record with { Release = release with { TakenBackBy = by!.Trim(), TakenBackAt = at } })
            : Reading.Refused<RunRecord>(RunFaults.Of(runId, "release", "a layout that is not released", "a released layout")));

    /// <summary>Why the layout of a run is not changed: it is released; null where it is not.</summary>
    internal static InputFault? Holding(RunRecord record) => record.Release is { Holds: true } release
        ? RunFaults.Of(
            record.Run.Id, "release", Invariant($"a layout released by {release.By} on {release.At:yyyy-MM-dd} at {release.At:HH:mm}"),
            "a layout that is not released; take the release back before it is changed")
        : null;

    private async Task<Reading<RunRecord>> ChangeAsync(string runId, Func<RunRecord, Reading<RunRecord>> change) =>
        await makeRun.WhileIdleAsync(runId, async () =>
        {
            RunRecord? now = await store.RunAsync(runId, CancellationToken.None);
            Reading<RunRecord> changed = now is null ? Reading.Refused<RunRecord>(RunFaults.Of(runId, "id", "no run of that id", "the id of a planned run")) : change(now);
            if (changed.IsTaken)
                await store.SaveRunsAsync([changed.Value], changed.Value.State == RunState.Completed ? ItemState.Completed : ItemState.Planned, CancellationToken.None);
            return changed;
        });

    private InputFault? Named(string runId, string? by)
    {
        string name = by?.Trim() ?? "";
        if (name.Length is 0 or > MostName || name.Any(char.IsControl))
            return RunFaults.Of(runId, "by", name.Length == 0 ? "no name" : Invariant($"{name.Length} characters"), Invariant($"a name of at most {MostName} characters"));
        return WhoMay.Count == 0 || WhoMay.Contains(name, StringComparer.OrdinalIgnoreCase)
            ? null
            : RunFaults.Of(runId, "by", Invariant($"'{name}'"), Invariant($"one of those the shop names: {string.Join(", ", WhoMay)}"));
    }
}
