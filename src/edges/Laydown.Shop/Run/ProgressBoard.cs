using System.Runtime.CompilerServices;
using System.Threading.Channels;

namespace Laydown.Shop.Run;

/// <summary>Where runs being made tell how far they are, and where screens and the command line look.</summary>
/// <remarks>Safe for several makers and watchers at once. Keeps the latest of each run; a watcher that is slow misses the ones between.</remarks>
public sealed class ProgressBoard : IProgress<MakeProgress>
{
    private const int WaitingForASlowWatcher = 256;
    private readonly Lock gate = new();
    private readonly SortedDictionary<string, MakeProgress> latest = new(StringComparer.Ordinal);
    private readonly List<Channel<MakeProgress>> watchers = [];

    /// <inheritdoc/>
    public void Report(MakeProgress value)
    {
        lock (gate)
        {
            latest[value.RunId] = value;
            foreach (Channel<MakeProgress> watcher in watchers)
                watcher.Writer.TryWrite(value);
        }
    }

    /// <summary>The latest of a run, or null when it was not being made since the start of the program.</summary>
    public MakeProgress? Latest(string runId)
    {
        lock (gate)
            return latest.GetValueOrDefault(runId);
    }

    /// <summary>First the latest of every run by id, then each report as it comes, until cancelled.</summary>
    /// <exception cref="OperationCanceledException">The watcher has gone.</exception>
    public async IAsyncEnumerable<MakeProgress> WatchAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        Channel<MakeProgress> channel = Join();
        try
        {
            await foreach (MakeProgress progress in channel.Reader.ReadAllAsync(cancellation))
                yield return progress;
        }
        finally
        {
            lock (gate)
                watchers.Remove(channel);
        }
    }

    private Channel<MakeProgress> Join()
    {
        // What is known is put in under the same lock, so that nothing is missed or comes in the wrong order.
        var channel = Channel.CreateBounded<MakeProgress>(
            new BoundedChannelOptions(WaitingForASlowWatcher) { FullMode = BoundedChannelFullMode.DropOldest });
        lock (gate)
        {
            foreach (MakeProgress known in latest.Values)
                channel.Writer.TryWrite(known);
            watchers.Add(channel);
        }

        return channel;
    }
}
