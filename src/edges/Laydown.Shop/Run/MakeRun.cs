using Laydown.Measures;
using Laydown.Shop.Layers;
using Laydown.Shop.Layout;
using Laydown.Shop.Orders;
using Laydown.Shop.Press;

namespace Laydown.Shop.Run;

/// <summary>Makes the press files and papers of a planned run.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">What it remembers.</param>
/// <param name="files">Makes run folders.</param>
/// <param name="board">Where progress is told.</param>
/// <param name="levels">Tells how full tanks are, for the papers; null to show what the press's description says.</param>
public sealed class MakeRun(ShopFolder folder, Catalogue catalogue, IShopStore store, IPressFiles files, ProgressBoard board, TankLevels? levels = null) : IDisposable
{
    private readonly SemaphoreSlim oneAtATime = new(1, 1);
    private readonly SemaphoreSlim changes = new(1, 1);
    private readonly Dictionary<string, int> makers = new(StringComparer.Ordinal);
    private bool swept;

    /// <summary>
    /// Makes <c>runs/<i>id</i></c>. Nothing is done when the inputs are those of last time and the folder is still whole. One run is made at a time.
    /// A run that fails or is cancelled is aborted, leaves no folder and can be made again.
    /// </summary>
    /// <returns>The run as it is now, or why it could not be made.</returns>
    /// <exception cref="OperationCanceledException">Making was cancelled; the run is aborted.</exception>
    public async Task<Reading<RunRecord>> MakeAsync(string runId, CancellationToken cancellation)
    {
        await using Maker _ = await EnterAsync(runId, cancellation);
        await oneAtATime.WaitAsync(cancellation);
        try
        {
            await SweepAsync(cancellation);
            RunRecord? record = await store.RunAsync(runId, cancellation);
            if (record is null)
                return Refused(runId, "id", "no run of that id", "the id of a planned run");

            Reading<RunContext> context = RunContexts.Gather(record.Run, catalogue, await ItemsAsync(cancellation), new LookShelf(folder));
            return context.IsTaken
                ? await MakeOrSkipAsync(record, context.Value, cancellation)
                : Reading.Refused<RunRecord>(context.Faults);
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        oneAtATime.Dispose();
        changes.Dispose();
    }

    /// <summary>Changes a run while nobody makes it and nobody begins to.</summary>
    /// <returns>What the change gives, or that the run is being made or waits its turn.</returns>
    internal async Task<Reading<T>> WhileIdleAsync<T>(string runId, Func<Task<Reading<T>>> change)
    {
        await changes.WaitAsync(CancellationToken.None);
        try
        {
            return makers.ContainsKey(runId)
                ? Reading.Refused<T>(new InputFault(
                    Invariant($"run {runId}"), null, "state", "its press files are being made", "a run that is not being made; cancel the making, or wait for its end"))
                : await change();
        }
        finally
        {
            changes.Release();
        }
    }

    private async Task<Maker> EnterAsync(string runId, CancellationToken cancellation)
    {
        await changes.WaitAsync(cancellation);
        makers[runId] = makers.GetValueOrDefault(runId) + 1;
        changes.Release();
        return new(this, runId);
    }

    private async ValueTask LeaveAsync(string runId)
    {
        await changes.WaitAsync(CancellationToken.None);
        if (--makers[runId] == 0)
            makers.Remove(runId);
        changes.Release();
    }

    private sealed class Maker(MakeRun desk, string runId) : IAsyncDisposable
    {
        public ValueTask DisposeAsync() => desk.LeaveAsync(runId);
    }

    /// <summary>Does more with a run that is made, while no other is being made.</summary>
    internal async Task<Reading<RunRecord>> InTurnAsync(
        RunRecord record, Func<RunRecord, RunContext, Task<Reading<RunRecord>>> more, CancellationToken cancellation)
    {
        await using Maker _ = await EnterAsync(record.Run.Id, cancellation);
        await oneAtATime.WaitAsync(cancellation);
        try
        {
            Reading<RunContext> context = RunContexts.Gather(record.Run, catalogue, await ItemsAsync(cancellation), new LookShelf(folder));
            return context.IsTaken ? await more(record, context.Value) : Reading.Refused<RunRecord>(context.Faults);
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <summary>Puts right what a kill left: runs in progress wait again, and half-made folders go. Once for each program start.</summary>
    private async Task SweepAsync(CancellationToken cancellation)
    {
        if (swept)
            return;
        RunFolders.SweepScratch(folder.Runs);
        List<RunRecord> left = [.. (await store.RunsAsync(cancellation)).Where(r => r.State == RunState.InProgress)];
        if (left.Count > 0)
            await store.SaveRunsAsync([.. left.Select(r => r with { State = RunState.Waiting })], ItemState.Planned, cancellation);
        swept = true;
    }

    private async Task<Reading<RunRecord>> MakeOrSkipAsync(RunRecord record, RunContext context, CancellationToken cancellation)
    {
        string id = record.Run.Id;
        string hash = await RunContexts.HashAsync(context, cancellation);
        if (record.State == RunState.Completed
            && string.Equals(hash, record.InputHash, StringComparison.Ordinal)
            && await RunFolders.IsWholeAsync(Path.Combine(folder.Runs, id), record.Files, cancellation))
        {
            board.Report(new(id, "made before; nothing changed", 100));
            return Reading.Of(record);
        }

        RunRecord begun = record with
        {
            State = RunState.InProgress,
            InputHash = hash,
            Files = [],
            FolderName = null,
            Failure = null,
            FilesLayout = null,
            LetGo = string.Equals(hash, record.InputHash, StringComparison.Ordinal) ? record.LetGo : null,
        };
        await store.SaveRunsAsync([begun], ItemState.Planned, cancellation);
        board.Report(new(id, "begun", 0));
        try
        {
            // Levels of tanks stand on the papers, but what they are changes no file: they came after the hash.
            RunContext now = levels is null ? context : context with { Press = await levels.AsReadAsync(context.Press, cancellation) };
            Reading<IReadOnlyList<ManifestEntry>> made = await files.MakeAsync(now, folder.Runs, board, cancellation);
            return made.IsTaken ? Reading.Of(await CompleteAsync(begun, made.Value)) : await AbortAsync(begun, made.Faults);
        }
        catch (Exception failure) when (cancellation.IsCancellationRequested)
        {
            // A library that is stopped half-way may throw something of its own; to the caller it is one and the same.
            await SaveAbortedAsync(begun, "Cancelled.");
            throw new OperationCanceledException("Cancelled while a run was made.", failure, cancellation);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return await AbortAsync(begun, [new(Invariant($"run {id}"), null, "files", failure.Message, "a folder that can be written, with room on the disk")]);
        }
        catch (Exception fault)
        {
            // Even a fault of the program must not leave the run as if it were being made.
            await SaveAbortedAsync(begun, Invariant($"A fault of the program: {fault.Message}"));
            throw;
        }
    }

    // From here on nothing may be cut off half-way, so that store and folder agree: no cancellation is passed on.
    private async Task<RunRecord> CompleteAsync(RunRecord begun, IReadOnlyList<ManifestEntry> made)
    {
        RunRecord done = begun with { State = RunState.Completed, Files = made, FolderName = begun.Run.Id, FilesLayout = LayoutMark.Of(begun.Run.Sheets) };
        await store.SaveRunsAsync([done], ItemState.Completed, CancellationToken.None);
        board.Report(new(begun.Run.Id, "made", 100));
        return done;
    }

    private async Task<Reading<RunRecord>> AbortAsync(RunRecord begun, IReadOnlyList<InputFault> faults)
    {
        await SaveAbortedAsync(begun, string.Join('\n', faults));
        return Reading.Refused<RunRecord>(faults);
    }

    private async Task SaveAbortedAsync(RunRecord begun, string failure)
    {
        await store.SaveRunsAsync([begun with { State = RunState.Aborted, Failure = failure }], ItemState.Planned, CancellationToken.None);
        double done = board.Latest(begun.Run.Id)?.DonePercent ?? 0;
        board.Report(new(begun.Run.Id, Invariant($"aborted: {failure}"), done));
    }

    private async Task<IReadOnlyList<ItemRecord>> ItemsAsync(CancellationToken cancellation) =>
        [.. (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items)];

    private static Reading<RunRecord> Refused(string runId, string field, string found, string wanted) =>
        Reading.Refused<RunRecord>(new InputFault(Invariant($"run {runId}"), null, field, found, wanted));
}
