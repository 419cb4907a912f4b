using System.Text.Json;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Shop.Layout;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>Takes another press for a planned run: it is planned anew for that press (mode, layers, layout, time, ink, cost), as a whole or not at all.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">What it remembers.</param>
/// <param name="plan">Plans runs.</param>
/// <param name="replace">Puts a run planned anew in the place of the one before.</param>
/// <param name="log">What began at the presses; null where the shop keeps no log.</param>
public sealed class TakePress(Catalogue catalogue, IShopStore store, PlanRuns plan, ReplaceRun replace, ILogStore? log = null)
{
    private const string FilesGone = "The press was changed: press files and set-up sheet for the press before are of no use on this one and are gone.";
    private const string GoneBack = "The change of press was taken back: press files and set-up sheet for the other press are gone.";

    // Trying a press renders every piece through its profile; what was rendered once holds until the piece changes.
    private readonly RememberedInk ink = new(plan.Measure);

    /// <summary>Presses a run could be asked on: all but its own.</summary>
    public IReadOnlyList<PressDescription> Others(RunRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return [.. catalogue.Presses.Where(p => p.Id != record.Run.PressId)];
    }

    /// <summary>The run as it would be on another press; nothing is changed.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="pressId">The press.</param>
    /// <param name="cancellation">Stops.</param>
    /// <returns>The run, or why that press cannot print it.</returns>
    public async Task<Reading<Laydown.Plan.Runs.Run>> TryAsync(string runId, string pressId, CancellationToken cancellation) =>
        (await PlanAsync(runId, pressId, cancellation)).Then(p => Reading.Of(p.Planned.Run));

    /// <summary>Puts the run on another press; who took it and why stays with the run.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="pressId">The press.</param>
    /// <param name="by">Who takes it, at most 100 letters.</param>
    /// <param name="reason">Why, 3 to 400 letters.</param>
    /// <param name="cancellation">Stops before anything is changed.</param>
    /// <returns>The run as it is now, or why not; then nothing was changed.</returns>
    public async Task<Reading<RunRecord>> TakeAsync(string runId, string pressId, string by, string reason, CancellationToken cancellation) =>
        (await MoveAsync(runId, pressId, by, reason, cancellation)).Then(m => Reading.Of(m.Now));

    /// <summary>The same, with what it takes to go back.</summary>
    internal async Task<Reading<(RunRecord Now, PressMove Move)>> MoveAsync(string runId, string pressId, string by, string reason, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(by);
        ArgumentNullException.ThrowIfNull(reason);
        IReadOnlyList<InputFault> words = [.. RunFaults.NameAndReason(runId, by.Trim(), reason.Trim(), "this press")];
        if (words.Count > 0)
            return Reading.Refused<(RunRecord, PressMove)>(words);
        Reading<Tried> tried = await PlanAsync(runId, pressId, cancellation);
        if (!tried.IsTaken)
            return Reading.Refused<(RunRecord, PressMove)>(tried.Faults);
        (RunRecord before, PlannedOnPress planned, IReadOnlyList<ItemRecord> items) = tried.Value;
        Laydown.Plan.Runs.Run run = planned.Run with { OnPress = new PressTaken(pressId, before.Run.PressId, by.Trim(), reason.Trim()) };
        Reading<RunContext> context = RunContexts.Gather(run, catalogue, [.. planned.Items.Select(i => i with { RunId = runId })], plan.Looks);
        if (!context.IsTaken)
            return Reading.Refused<(RunRecord, PressMove)>(context.Faults);
        string hash = await RunContexts.HashAsync(context.Value, cancellation);
        Reading<RunContext> left = RunContexts.Gather(before.Run, catalogue, items, plan.Looks);
        JsonElement? from = left.IsTaken ? await InputsAsync(left.Value, cancellation) : null;

        // From here on nothing may be cut off half-way.
        cancellation.ThrowIfCancellationRequested();
        Reading<RunRecord> taken = await replace.ReplaceAsync(
            run, hash, FilesGone, now => ReplaceRun.Closed(now) ?? ReleaseLayout.Holding(now) ?? RunFaults.Changed(now, before), StacksOf(planned.Items));
        return taken.Then(now => Reading.Of((now, new PressMove(before, StacksOf(items), hash, from))));
    }

    /// <summary>Takes a change of press back: the run stands as it was planned before, with its mode and its layout; its press files must be made again and its sheet measured anew.</summary>
    /// <param name="move">The change.</param>
    /// <param name="cancellation">Stops before anything is changed.</param>
    /// <returns>The run, or why it stays where it is: it began, was changed or released since, or what it was planned from is another.</returns>
    internal async Task<Reading<RunRecord>> BackAsync(PressMove move, CancellationToken cancellation)
    {
        Laydown.Plan.Runs.Run run = move.Before.Run;
        if (log is not null && await log.OfRunAsync(run.Id, cancellation) is [.., var last])
            return Reading.Refused<RunRecord>(RunFaults.Of(run.Id, "log", Invariant($"{last.Kind} at the press already"), "a run that has not begun at its press"));
        IReadOnlyList<ItemRecord> items = [.. (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items)
            .Where(i => i.RunId == run.Id).Select(i => move.Stacks.TryGetValue(i.Item.Id, out LayerStack? stack) ? i with { Stack = stack } : i)];
        Reading<RunContext> context = RunContexts.Gather(run, catalogue, items, plan.Looks);
        if (!context.IsTaken)
            return Reading.Refused<RunRecord>(context.Faults);
        string hash = await RunContexts.HashAsync(context.Value, cancellation);
        if (await ChangedSinceAsync(move, context.Value, hash, cancellation) is { } changed)
            return Reading.Refused<RunRecord>(changed);

        // From here on nothing may be cut off half-way.
        cancellation.ThrowIfCancellationRequested();
        return await replace.ReplaceAsync(run, hash, GoneBack, now => ReplaceRun.Closed(now) ?? ReleaseLayout.Holding(now)
            ?? (string.Equals(now.InputHash, move.HashAfter, StringComparison.Ordinal) ? null : RunFaults.Of(run.Id, "run", "one that was changed since it was put on that press", "the run as that change left it")), move.Stacks);
    }

    // Another program finds another hash for the same inputs, so what differs is looked for in the inputs themselves.
    private static async Task<InputFault?> ChangedSinceAsync(PressMove move, RunContext now, string hash, CancellationToken cancellation)
    {
        if (string.Equals(hash, move.Before.InputHash, StringComparison.Ordinal))
            return null;
        if (move.Inputs is not { } from)
            return RunFaults.Of(now.Run.Id, "run", "artwork, stock, press or rules that changed since it was planned there, or another program", "the shop as it was; put the run on that press anew");
        return RunInputs.Differences(from, await InputsAsync(now, cancellation)) is { Count: > 0 } differences
            ? RunFaults.Of(now.Run.Id, "run", Invariant($"another than it was planned from there: {string.Join("; ", differences)}"), "the shop as it was; put the run on that press anew")
            : null;
    }

    private static async Task<JsonElement> InputsAsync(RunContext context, CancellationToken cancellation) =>
        JsonSerializer.SerializeToElement(await RunInputs.OfAsync(context, cancellation), ShopJson.Compact);

    private static Dictionary<string, LayerStack> StacksOf(IEnumerable<ItemRecord> items) =>
        items.Where(i => i.Stack is not null).ToDictionary(i => i.Item.Id, i => i.Stack!, StringComparer.Ordinal);

    private async Task<Reading<Tried>> PlanAsync(string runId, string pressId, CancellationToken cancellation)
    {
        RunRecord? record = await store.RunAsync(runId, cancellation);
        if (record is null)
            return Refused(runId, "id", "no run of that id", "the id of a planned run");
        if ((ReplaceRun.Closed(record) ?? ReleaseLayout.Holding(record)) is { } closed)
            return Reading.Refused<Tried>(closed);
        if (log is not null && await log.OfRunAsync(runId, cancellation) is [.., var last])
            return Refused(runId, "log", Invariant($"{last.Kind} at the press already"), "a run that has not begun at its press");
        if (Others(record).FirstOrDefault(p => p.Id == pressId) is not { } press)
            return Refused(runId, "press", pressId == record.Run.PressId ? Invariant($"{pressId}, its own") : pressId, Others(record) is { Count: > 0 } others
                ? "one of " + string.Join(", ", others.Select(p => p.Id)) : "a shop with another press");

        HashSet<string> members = [.. record.Run.Items.Select(i => i.ItemId)];
        IReadOnlyList<ItemRecord> items = [.. (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items).Where(i => members.Contains(i.Item.Id) && i.RunId == runId)];
        return items.Count < members.Count
            ? Refused(runId, "items", Invariant($"{items.Count} of {members.Count} still in it"), "a run that still has its items; plan anew")
            : (await plan.OnPressAsync(runId, items, press, ink, cancellation)).Then(p => Reading.Of(new Tried(record, p, items)));
    }

    private static Reading<Tried> Refused(string runId, string field, string found, string wanted) => Reading.Refused<Tried>(RunFaults.Of(runId, field, found, wanted));

    private sealed record Tried(RunRecord Before, PlannedOnPress Planned, IReadOnlyList<ItemRecord> Items);
}
