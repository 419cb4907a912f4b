using System.Collections.Concurrent;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Layers;

namespace Laydown.Web.Http;

/// <summary>Solves panels in the background, one of each item at a time; a solve can be asked how far it is and be cancelled.</summary>
/// <param name="shop">The open shop.</param>
/// <param name="log">Where unforeseen failures are written.</param>
public sealed class SolvingDesk(ShopServices shop, ILogger<SolvingDesk> log) : IDisposable
{
    private readonly ConcurrentDictionary<string, Job> jobs = new(StringComparer.Ordinal);
    private readonly CancellationTokenSource closing = new();

    /// <summary>How far the item's last solve is, or null where none was started.</summary>
    public SolvingState? State(string itemId) => jobs.TryGetValue(itemId, out Job? job) ? job.State : null;

    /// <summary>Starts a solve and returns at once.</summary>
    /// <returns>False when the item is being solved already.</returns>
    public bool Start(PanelRequest request)
    {
        string item = request.ItemId ?? throw new ArgumentException("Panel: wanted an item.", nameof(request));
        Job fresh = new(CancellationTokenSource.CreateLinkedTokenSource(closing.Token));
        Job standing = jobs.AddOrUpdate(item, fresh, (_, old) => old.State.Busy ? old : fresh);
        if (!ReferenceEquals(standing, fresh))
        {
            fresh.Cancel.Dispose();
            return false;
        }

        _ = Task.Run(() => SolveAsync(request, fresh), CancellationToken.None);
        return true;
    }

    /// <summary>Cancels the item's solve; nothing of it is left.</summary>
    /// <returns>False when it is not being solved.</returns>
    public bool Cancel(string itemId)
    {
        if (!jobs.TryGetValue(itemId, out Job? job) || !job.State.Busy)
            return false;
        try
        {
            job.Cancel.Cancel();
            return true;
        }
        catch (ObjectDisposedException)
        {
            // It ended in this very moment.
            return false;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        closing.Cancel();
        closing.Dispose();
    }

    private async Task SolveAsync(PanelRequest request, Job job)
    {
        try
        {
            Reading<StoredLook> made = await shop.Layers.SolvePanel.SolveAsync(request, job, job.Cancel.Token);
            job.State = made.IsTaken
                ? new(false, 100, made.Value.Record.LookId, [])
                : job.State with { Busy = false, Faults = made.Faults };
        }
        catch (OperationCanceledException)
        {
            job.State = job.State with { Busy = false };
        }
        catch (Exception failure)
        {
            // The pages must stay up whatever a solve meets; the failure is shown with the item.
            log.LogError(failure, "Solving of {ItemId} failed.", request.ItemId);
            job.State = job.State with { Busy = false, Faults = [new(Invariant($"item {request.ItemId}"), null, "panel", failure.Message, "a panel")] };
        }
        finally
        {
            job.Cancel.Dispose();
        }
    }

    private sealed class Job(CancellationTokenSource cancel) : IProgress<double>
    {
        private SolvingState state = new(true, 0, null, []);

        public CancellationTokenSource Cancel { get; } = cancel;

        public SolvingState State
        {
            get => Volatile.Read(ref state);
            set => Volatile.Write(ref state, value);
        }

        public void Report(double value)
        {
            SolvingState now = State;
            Interlocked.CompareExchange(ref state, now with { DonePercent = Math.Max(now.DonePercent, 100 * value) }, now);
        }
    }
}
