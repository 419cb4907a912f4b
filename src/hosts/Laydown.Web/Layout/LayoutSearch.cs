using System.Diagnostics;
using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using System.Threading.Channels;
using Laydown.Shop.Layout;

namespace Laydown.Web.Layout;

/// <summary>One search for better layouts: keeps the best, and tells one watcher the latest; what came between may be left out.</summary>
internal sealed class LayoutSearch(string id, string runId) : IDisposable
{
    private readonly Channel<SearchNews> news = Channel.CreateBounded<SearchNews>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
    private readonly CancellationTokenSource stop = new();
    private readonly long began = Stopwatch.GetTimestamp();
    private FoundLayout? best;
    private bool asked;

    public string Id => id;

    public string RunId => runId;

    public CancellationToken Token => stop.Token;

    public bool IsOver { get; private set; }

    public void Found(FoundLayout found)
    {
        best = found;
        news.Writer.TryWrite(new(Seconds, found, null));
    }

    public void Limit(TimeSpan time) => stop.CancelAfter(time);

    public void Stop()
    {
        asked = true;
        stop.Cancel();
    }

    public void Over(string? why)
    {
        IsOver = true;
        news.Writer.TryWrite(new(Seconds, best, why ?? (asked ? "stopped" : stop.IsCancellationRequested ? "time is up" : "no layout of fewer sheets is possible")));
        news.Writer.TryComplete();
    }

    /// <summary>The news as server-sent events named <c>found</c> and <c>ended</c>.</summary>
    public async IAsyncEnumerable<SseItem<SearchNews>> FeedAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        await foreach (SearchNews one in news.Reader.ReadAllAsync(cancellation))
            yield return new(one, one.Ended is null ? "found" : "ended");
    }

    public void Dispose() => stop.Dispose();

    private double Seconds => Math.Round(Stopwatch.GetElapsedTime(began).TotalSeconds, 3);
}
