using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Shop.Press;

/// <summary>Runs that are planned: those that items are in, aborted ones left out.</summary>
internal static class WaitingRuns
{
    /// <summary>The runs, earliest due first, then by id.</summary>
    public static async Task<IReadOnlyList<Laydown.Plan.Runs.Run>> OfAsync(IShopStore store, CancellationToken cancellation)
    {
        HashSet<string> wanted = [.. (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items).Select(i => i.RunId).OfType<string>()];
        return [.. (await store.RunsAsync(cancellation)).Where(r => r.State != RunState.Aborted && wanted.Contains(r.Run.Id))
            .Select(r => r.Run).OrderBy(r => r.Due).ThenBy(r => r.Id, StringComparer.Ordinal)];
    }
}
