using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>Puts ready items into runs.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">What it remembers.</param>
/// <param name="plan">Plans ready items under the day's first free number.</param>
public sealed class PlanRuns(
    Catalogue catalogue,
    IShopStore store,
    Func<IReadOnlyList<ItemRecord>, Func<int, string>, CancellationToken, Task<PlannedRuns>> plan)
{
    /// <summary>
    /// Plans all ready items. Run ids are <c>R-yyyymmdd-NN</c>, counted up from the last of that day, so equal shops give equal ids.
    /// Planned runs that lost an item, because it changed, are dissolved first and their other items planned anew.
    /// </summary>
    public async Task<PlannedRuns> PlanAsync(DateOnly today, CancellationToken cancellation)
    {
        IReadOnlyList<string> dissolved = await DissolveAsync(cancellation);
        string day = Invariant($"R-{today:yyyyMMdd}-");
        IReadOnlyList<RunRecord> before = await store.RunsAsync(cancellation);
        int last = before.Where(r => r.Run.Id.StartsWith(day, StringComparison.Ordinal))
            .Select(r => int.TryParse(r.Run.Id.AsSpan(day.Length), out int n) ? n : 0)
            .DefaultIfEmpty(0).Max();

        List<ItemRecord> ready = [.. (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items).Where(i => i.State == ItemState.Ready)];
        PlannedRuns planned = await plan(ready, n => Invariant($"{day}{last + n:00}"), cancellation);
        if (planned.Held.Count > 0)
            await store.SaveItemsAsync(planned.Held, cancellation);
        if (planned.Runs.Count > 0)
            await store.SaveRunsAsync(planned.Runs, ItemState.Planned, cancellation);
        return planned with { Dissolved = dissolved };
    }

    private async Task<IReadOnlyList<string>> DissolveAsync(CancellationToken cancellation)
    {
        Dictionary<string, ItemRecord> items = (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items)
            .ToDictionary(i => i.Item.Id, StringComparer.Ordinal);
        List<RunRecord> stale = [.. (await store.RunsAsync(cancellation)).Where(r =>
            r.State is RunState.Waiting or RunState.Aborted && RunContexts.Gather(r.Run, catalogue, [.. items.Values]) is { IsTaken: false }
            && r.Run.Items.Any(i => string.Equals(items.GetValueOrDefault(i.ItemId)?.RunId, r.Run.Id, StringComparison.Ordinal)))];
        if (stale.Count > 0)
        {
            await store.SaveRunsAsync(
                [.. stale.Select(r => r with { State = RunState.Aborted, Failure = "Dissolved: an item changed after planning." })],
                ItemState.Ready, cancellation);
        }

        return [.. stale.Select(r => r.Run.Id)];
    }
}
