using System.Collections.Concurrent;

namespace Laydown.Web.Frame;

/// <summary>Work that goes on after the answer to whoever asked for it. At closing it is cancelled and waited for: what it reads and writes must outlive it.</summary>
internal sealed class BackgroundWork : IAsyncDisposable
{
    /// <summary>How long closing waits for work that was cancelled; what has not ended by then is left to the next start of the program, which puts it right.</summary>
    internal static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(30);

    private readonly ConcurrentDictionary<Task, byte> going = new();
    private readonly CancellationTokenSource closing = new();

    /// <summary>Cancelled when the program closes.</summary>
    public CancellationToken Closing => closing.Token;

    /// <summary>Begins work and returns at once. The work itself tells of its failures.</summary>
    public void Begin(Func<Task> work) => Follow(Task.Run(work, CancellationToken.None));

    /// <summary>Begins work whose answer somebody waits for.</summary>
    public Task<T> Begin<T>(Func<Task<T>> work)
    {
        var begun = Task.Run(work, CancellationToken.None);
        Follow(begun);
        return begun;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await closing.CancelAsync();

        // Failures were told by the work, or are told to those who wait for its answer.
        await Task.WhenAny(Task.WhenAll(going.Keys), Task.Delay(LongestWait));
        closing.Dispose();
    }

    private void Follow(Task begun)
    {
        going[begun] = 0;
        _ = begun.ContinueWith(
            ended => going.TryRemove(ended, out byte _), CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default);
    }
}
