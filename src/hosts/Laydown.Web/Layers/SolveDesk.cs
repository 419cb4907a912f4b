using System.Collections.Concurrent;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Layers;
using Laydown.Web.Frame;

namespace Laydown.Web.Layers;

/// <summary>Solves panels in the background for the pages, one of each item at a time, and lets them be cancelled.</summary>
/// <param name="shop">The open shop.</param>
/// <param name="log">Where unforeseen failures are written.</param>
public sealed class SolveDesk(ShopServices shop, ILogger<SolveDesk> log) : IAsyncDisposable
{
    private readonly ConcurrentDictionary<string, Work> works = new(StringComparer.Ordinal);
    private readonly SemaphoreSlim turn = new(1);
    private readonly BackgroundWork background = new();

    /// <summary>How far the solving for an item is; null when none was started since the start of the program.</summary>
    public SolveState? Of(string itemId) => works.TryGetValue(itemId, out Work? work) ? work.State : null;

    /// <summary>Starts solving and returns at once.</summary>
    /// <returns>False when the item is being solved already.</returns>
    public bool Start(PanelRequest request)
    {
        string item = request.ItemId ?? throw new ArgumentException("Panel: wanted an item.", nameof(request));
        Work work = new(CancellationTokenSource.CreateLinkedTokenSource(background.Closing));
        Work now = works.AddOrUpdate(item, work, (_, old) => old.State.Busy ? old : work);
        if (!ReferenceEquals(now, work))
        {
            work.Cancel.Dispose();
            return false;
        }

        background.Begin(() => SolveAsync(request, work));
        return true;
    }

    /// <summary>Cancels the solving for an item; nothing of it is left.</summary>
    /// <returns>False when it is not being solved.</returns>
    public bool Cancel(string itemId)
    {
        if (!works.TryGetValue(itemId, out Work? work) || !work.State.Busy)
            return false;
        work.Cancel.Cancel();
        return true;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await background.DisposeAsync();
        turn.Dispose();
    }

    private async Task SolveAsync(PanelRequest request, Work work)
    {
        try
        {
            // One after the other: a solve uses every core as it is.
            await turn.WaitAsync(work.Cancel.Token);
            try
            {
                Reading<StoredLook> solved = await shop.Layers.SolvePanel.SolveAsync(request, work, work.Cancel.Token);
                work.State = solved.Match(
                    look => new SolveState(false, 100, "solved", look.Record.LookId, []), faults => new SolveState(false, 0, "not solved", null, faults));
            }
            finally
            {
                turn.Release();
            }
        }
        catch (OperationCanceledException)
        {
            work.State = new(false, 0, "cancelled; nothing of it is left", null, []);
        }
        catch (Exception failure)
        {
            // The page must stay up whatever a picture does; the failure is shown where the solving was asked for.
            log.LogError(failure, "Solving of item {ItemId} failed.", request.ItemId);
            work.State = new(false, 0, "not solved", null, [new(Invariant($"item {request.ItemId}"), null, "panel", failure.Message, "a panel")]);
        }
    }

    private sealed class Work(CancellationTokenSource cancel) : IProgress<double>
    {
        public CancellationTokenSource Cancel { get; } = cancel;

        public SolveState State { get; set; } = new(true, 0, "waits its turn", null, []);

        public void Report(double value)
        {
            if (State.Busy)
                State = new(true, 100 * Math.Clamp(value, 0, 1), Words(value), null, []);
        }

        private static string Words(double share) => share switch
        {
            < 0.2 => "reads the pictures",
            < 0.35 => "chooses white and brightness for the whole",
            < 0.8 => "finds inks for every pixel",
            < 0.95 => "looks at what came out",
            _ => "writes pictures and maps",
        };
    }
}
