using System.Collections.Concurrent;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Run;
using Laydown.Web.Frame;

namespace Laydown.Web.Run;

/// <summary>Makes runs in the background for the pages and the HTTP interface, and lets them be cancelled. One of each run at a time.</summary>
/// <param name="shop">The open shop.</param>
/// <param name="log">Where unforeseen failures are written.</param>
public sealed class MakingDesk(ShopServices shop, ILogger<MakingDesk> log) : IAsyncDisposable
{
    private readonly ConcurrentDictionary<string, CancellationTokenSource> busy = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, IReadOnlyList<InputFault>> refusals = new(StringComparer.Ordinal);
    private readonly BackgroundWork background = new();

    /// <summary>Whether a run is being made, or waits for the one before it.</summary>
    public bool IsBusy(string runId) => busy.ContainsKey(runId);

    /// <summary>Why the last try was refused; empty when it was not.</summary>
    public IReadOnlyList<InputFault> Refusal(string runId) => refusals.GetValueOrDefault(runId) ?? [];

    /// <summary>Starts making a run and returns at once.</summary>
    /// <returns>False when it is being made already.</returns>
    public bool Start(string runId) => Start(runId, cancellation => shop.MakeRun.MakeAsync(runId, cancellation));

    /// <summary>Starts making the dots of a run and returns at once; what an earlier make left is gone on with where its inputs are the same.</summary>
    /// <returns>False when something of it is being made already.</returns>
    public bool StartDots(string runId, DotsWish wish) => Start(runId, cancellation => shop.MakeDots.MakeAsync(runId, wish, cancellation));

    private bool Start(string runId, Func<CancellationToken, Task<Reading<RunRecord>>> make)
    {
        var cancel = CancellationTokenSource.CreateLinkedTokenSource(background.Closing);
        if (!busy.TryAdd(runId, cancel))
        {
            cancel.Dispose();
            return false;
        }

        refusals.TryRemove(runId, out _);
        shop.Progress.Report(new(runId, "waits its turn", 0));
        background.Begin(() => MakeAsync(runId, make, cancel));
        return true;
    }

    /// <summary>Cancels the making of a run; nothing of it is left.</summary>
    /// <returns>False when it is not being made.</returns>
    public bool Cancel(string runId)
    {
        if (!busy.TryGetValue(runId, out CancellationTokenSource? cancel))
            return false;
        try
        {
            cancel.Cancel();
            return true;
        }
        catch (ObjectDisposedException)
        {
            // It ended in this very moment.
            return false;
        }
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => background.DisposeAsync();

    private async Task MakeAsync(string runId, Func<CancellationToken, Task<Reading<RunRecord>>> make, CancellationTokenSource cancel)
    {
        string ended = "ended";
        try
        {
            Reading<RunRecord> made = await make(cancel.Token);
            if (!made.IsTaken)
            {
                refusals[runId] = made.Faults;
                ended = "not made";
            }
        }
        catch (OperationCanceledException)
        {
            ended = "cancelled";
        }
        catch (Exception failure)
        {
            // The page must stay up whatever a run meets; the failure is shown with the run.
            log.LogError(failure, "Making of run {RunId} failed.", runId);
            refusals[runId] = [new(Invariant($"run {runId}"), null, "files", failure.Message, "press files")];
            ended = "not made";
        }
        finally
        {
            busy.TryRemove(runId, out _);
            cancel.Dispose();
            Tell(runId, ended);
        }
    }

    // A last word after the run has left the desk, so that watchers see the state it ended in.
    private void Tell(string runId, string ended)
    {
        MakeProgress? latest = shop.Progress.Latest(runId);
        bool whole = latest is { DonePercent: >= 100 };
        shop.Progress.Report(new(runId, whole ? latest!.Step : ended, latest?.DonePercent ?? 0));
    }
}
