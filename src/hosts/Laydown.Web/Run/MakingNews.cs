using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Web.Run;

/// <summary>One report of the making of a run as watchers get it.</summary>
/// <param name="RunId">The run.</param>
/// <param name="Step">What is being done, in words.</param>
/// <param name="DonePercent">Done of the whole, percent.</param>
/// <param name="State">State of the run, as the store has it.</param>
/// <param name="Busy">Whether it is being made or waits its turn.</param>
public sealed record MakingNews(string RunId, string Step, double DonePercent, RunState State, bool Busy)
{
    /// <summary>The news of all runs, or of one, as server-sent events named <c>making</c>, until the watcher goes.</summary>
    public static async IAsyncEnumerable<SseItem<MakingNews>> FeedAsync(
        ShopServices shop, MakingDesk desk, string? runId, [EnumeratorCancellation] CancellationToken cancellation)
    {
        await foreach (MakeProgress report in shop.Progress.WatchAsync(cancellation))
        {
            if (runId is not null && !string.Equals(runId, report.RunId, StringComparison.Ordinal))
                continue;

            // A slow watcher may be behind: once the run has left the desk it gets the last word, not an old step with the new state.
            bool busy = desk.IsBusy(report.RunId);
            MakeProgress now = busy ? report : shop.Progress.Latest(report.RunId) ?? report;
            RunRecord? run = await shop.Store.RunAsync(report.RunId, cancellation);
            if (run is not null)
                yield return new(new(report.RunId, now.Step, now.DonePercent, run.State, busy), "making");
        }
    }
}
