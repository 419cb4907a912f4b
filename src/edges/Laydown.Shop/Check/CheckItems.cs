using Laydown.Artwork.Pages;
using Laydown.Measures;
using Laydown.Press.Stacks;
using Laydown.Shop.Artwork;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Check;

/// <summary>Looks at the artwork of items that wait: measures the file, makes pictures of its pages, checks it and derives the stack.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="store">What it remembers.</param>
/// <param name="reader">Measures files.</param>
/// <param name="renderer">Makes pictures of pages.</param>
/// <param name="findings">Findings of an item with its measured file.</param>
/// <param name="build">The stack of an item with its measured file.</param>
public sealed class CheckItems(
    ShopFolder folder,
    IShopStore store,
    IArtworkReader reader,
    IPageRenderer renderer,
    Func<ItemRecord, ArtworkFile, IReadOnlyList<Finding>> findings,
    Func<ItemRecord, ArtworkFile, Reading<LayerStack>> build)
{
    private const int PreviewSidePx = 1400;
    private const int MostPreviews = 8;

    /// <summary>
    /// Checks every item that waits, and again those whose file could not be read before. An item with a fault or a stop finding is
    /// stopped, the others are ready; each is saved as soon as it is known.
    /// </summary>
    /// <exception cref="OperationCanceledException">Cancelled; items done so far are saved.</exception>
    public async Task<CheckedItems> CheckAsync(CancellationToken cancellation)
    {
        List<ItemRecord> looked = [];
        foreach (ItemRecord item in (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items).Where(Wanted))
        {
            cancellation.ThrowIfCancellationRequested();
            ItemRecord done = await CheckAsync(item, cancellation);
            await store.SaveItemsAsync([done], cancellation);
            looked.Add(done);
        }

        return new(looked);
    }

    private static bool Wanted(ItemRecord item) => item.ArtworkPath.Length > 0
        && (item.State == ItemState.Waiting || (item.State == ItemState.Stopped && item.Artwork is null));

    private async Task<ItemRecord> CheckAsync(ItemRecord item, CancellationToken cancellation)
    {
        List<InputFault> faults = [.. item.Faults.Where(f => string.Equals(f.File, ItemRules.OrderFile, StringComparison.Ordinal))];
        Reading<ArtworkFile> reading = await reader.ReadAsync(item.ArtworkPath, cancellation);
        if (!reading.IsTaken)
            return item with { State = ItemState.Stopped, Artwork = null, Faults = [.. faults, .. reading.Faults] };

        // The findings stand even where a picture or a stack cannot be made, so that one look shows all that is wrong.
        ArtworkFile artwork = reading.Value;
        faults.AddRange(await PreviewsAsync(item, artwork, cancellation));
        IReadOnlyList<Finding> found = findings(item, artwork);
        Reading<LayerStack> stack = build(item, artwork);
        faults.AddRange(stack.Faults);
        bool stop = faults.Count > 0 || found.Any(f => f.Severity == Severity.Stop);
        return item with
        {
            State = stop ? ItemState.Stopped : ItemState.Ready,
            Artwork = artwork,
            Faults = faults,
            Findings = found,
            Stack = stack.Match<LayerStack?>(s => s, _ => null),
        };
    }

    private async Task<IReadOnlyList<InputFault>> PreviewsAsync(ItemRecord item, ArtworkFile artwork, CancellationToken cancellation)
    {
        List<InputFault> faults = [];
        Directory.CreateDirectory(folder.Previews);
        foreach (ArtworkPage page in artwork.Pages.Take(MostPreviews))
        {
            string png = folder.Preview(artwork.Sha256, page.Number);
            if (File.Exists(png))
                continue;
            Reading<SizeMm> made = await renderer.PreviewAsync(item.ArtworkPath, page.Number, PreviewSidePx, png, cancellation);
            faults.AddRange(made.Faults);
        }

        return faults;
    }
}
