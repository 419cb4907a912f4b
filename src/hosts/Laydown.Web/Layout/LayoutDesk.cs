using System.Collections.Concurrent;
using System.Net.ServerSentEvents;
using Laydown.Layout.Hands;
using Laydown.Layout.Search;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop;
using Laydown.Shop.Layout;
using Laydown.Web.Frame;

namespace Laydown.Web.Layout;

/// <summary>Keeps what layout pages ask for again and again: opened layouts, the ink of their items, searches that go on while one looks.</summary>
/// <param name="shop">The open shop.</param>
/// <param name="log">Where unforeseen failures are written.</param>
public sealed class LayoutDesk(ShopServices shop, ILogger<LayoutDesk> log) : IAsyncDisposable
{
    /// <summary>Longest time a search may take, seconds.</summary>
    public const int MostSeconds = 300;

    private const int MostSearches = 8, MostKept = 64;

    private readonly ConcurrentDictionary<string, (long Until, OpenedLayout Opened)> opened = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Task<Reading<IReadOnlyList<PlannedItem>>>> measured = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, LayoutSearch> searches = new(StringComparer.Ordinal);
    private readonly BackgroundWork background = new();

    /// <summary>The layout of a run as it was at most two seconds ago: dragging asks many times a second.</summary>
    public async Task<Reading<OpenedLayout>> OpenAsync(string runId, bool fresh, CancellationToken cancellation)
    {
        if (!fresh && opened.TryGetValue(runId, out (long Until, OpenedLayout Opened) kept) && Environment.TickCount64 < kept.Until)
            return Reading.Of(kept.Opened);
        Reading<OpenedLayout> now = await shop.Layouts.Open.OpenAsync(runId, cancellation);
        if (opened.Count >= MostKept)
            opened.Clear();
        if (now.IsTaken)
            opened[runId] = (Environment.TickCount64 + 2000, now.Value);
        return now;
    }

    /// <summary>Items of a run with their ink; begins to measure them where that was not done yet.</summary>
    public Task<Reading<IReadOnlyList<PlannedItem>>> MeasureAsync(OpenedLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        string key = Invariant($"{layout.Record.Run.Id} {layout.Context.Condition.Id} {string.Join(' ', layout.Context.Items.Select(i => Invariant($"{i.Item.Id} {i.Artwork?.Sha256} {i.LookId} {i.Stack?.Key}")))}");
        if (measured.Count >= MostKept)
            measured.Clear();
        return measured.GetOrAdd(key, _ => background.Begin(() => shop.Layouts.Measure.MeasureAsync(layout, background.Closing)));
    }

    /// <summary>The same as far as it is known now; null while it is being measured or where it cannot be.</summary>
    public IReadOnlyList<PlannedItem>? Measured(OpenedLayout layout) =>
        MeasureAsync(layout) is { IsCompletedSuccessfully: true } task && task.Result.IsTaken ? task.Result.Value : null;

    /// <summary>Begins a search; one of the same run that goes on is stopped.</summary>
    /// <returns>Its id, or null where too many go on.</returns>
    public string? Start(OpenedLayout layout, IReadOnlyList<HandSheet> sheets, int seed, double seconds)
    {
        ArgumentNullException.ThrowIfNull(layout);
        string runId = layout.Record.Run.Id;
        foreach (LayoutSearch old in searches.Values.Where(s => s.IsOver || string.Equals(s.RunId, runId, StringComparison.Ordinal)))
            End(old);
        if (searches.Count >= MostSearches)
            return null;
        LayoutSearch search = new(Guid.NewGuid().ToString("N"), runId);
        searches[search.Id] = search;
        search.Limit(TimeSpan.FromSeconds(Math.Clamp(seconds, 0.05, MostSeconds)));
        background.Begin(() => Run(search, layout, sheets, seed));
        return search.Id;
    }

    /// <summary>Stops a search; what it found stays with those who watch.</summary>
    /// <returns>False when there is none of that id.</returns>
    public bool Stop(string searchId)
    {
        if (!searches.TryGetValue(searchId, out LayoutSearch? search))
            return false;
        search.Stop();
        return true;
    }

    /// <summary>News of a search, or null when there is none of that id.</summary>
    public IAsyncEnumerable<SseItem<SearchNews>>? Feed(string searchId, CancellationToken cancellation) =>
        searches.TryGetValue(searchId, out LayoutSearch? search) ? search.FeedAsync(cancellation) : null;

    /// <inheritdoc/>
    public ValueTask DisposeAsync()
    {
        foreach (LayoutSearch search in searches.Values)
            search.Stop();
        return background.DisposeAsync();
    }

    // The watcher that still reads gets the last word; the entry goes.
    private void End(LayoutSearch search)
    {
        search.Stop();
        searches.TryRemove(search.Id, out _);
    }

    private Task Run(LayoutSearch search, OpenedLayout layout, IReadOnlyList<HandSheet> sheets, int seed)
    {
        try
        {
            shop.Layouts.Finish.Finish(layout, sheets, new SearchRules(seed), Measured(layout), search.Found, search.Token);
            search.Over(null);
        }
        catch (Exception failure)
        {
            // The page must stay up whatever a search meets; the failure is shown where it was asked for.
            log.LogError(failure, "Search for layouts of run {RunId} failed.", search.RunId);
            search.Over(Invariant($"failed: {failure.Message}"));
        }

        return Task.CompletedTask;
    }
}
