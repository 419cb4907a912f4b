using System.Collections.Concurrent;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Web.Run;

/// <summary>Keeps passes and forecasts of runs that pages asked for: figuring one takes a second, and pages ask again.</summary>
/// <param name="shop">The shop.</param>
public sealed class PassesDesk(ShopServices shop)
{
    private const int MostKept = 64;

    private readonly ConcurrentDictionary<string, Reading<PassesView>> kept = new(StringComparer.Ordinal);

    /// <summary>Passes of a run with the forecast of its own mode.</summary>
    /// <returns>The view, or why there is none.</returns>
    public async Task<Reading<PassesView>> OfAsync(RunRecord record, CancellationToken cancellation)
    {
        // Another input hash or other files make another forecast, and so does another state of the press.
        string key = Invariant($"{record.Run.Id} {record.InputHash} {record.FolderName} {record.State} {record.Files.Count}");
        if (kept.TryGetValue(key, out Reading<PassesView>? known))
            return known;
        Reading<PassesWish> wish = await shop.Passes.WishOfAsync(record.Run.Id, cancellation);
        Reading<PassesView> view = await Task.Run(() => wish.Then(w => shop.Passes.Show(w, others: false)), cancellation);
        if (kept.Count >= MostKept)
            kept.Clear();
        return kept[key] = view;
    }
}
