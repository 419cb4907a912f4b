using Laydown.Artwork.Checks;
using Laydown.Artwork.Pages;
using Laydown.Measures;
using Laydown.Plan.Build;
using Laydown.Plan.Runs;
using Laydown.Shop.Artwork;
using Laydown.Shop.Build;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Check;

/// <summary>Looks at the artwork of items that wait: measures the file, makes pictures of its pages, checks it and derives the stack.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">What it remembers.</param>
/// <param name="reader">Measures files.</param>
/// <param name="renderer">Makes pictures of pages.</param>
public sealed class CheckItems(ShopFolder folder, Catalogue catalogue, IShopStore store, IArtworkReader reader, IPageRenderer renderer)
{
    private const int PreviewSidePx = 1400;
    private const int MostPreviews = 8;

    /// <summary>
    /// Checks every item that waits, and again those held back by a fault outside their order line: what stood in the way may be gone.
    /// An item with a fault or a stop finding is stopped, the others are ready; each is saved as soon as it is known.
    /// </summary>
    /// <exception cref="OperationCanceledException">Cancelled; items done so far are saved.</exception>
    public async Task<CheckedItems> CheckAsync(CancellationToken cancellation)
    {
        List<ItemRecord> looked = [];
        foreach (ItemRecord item in (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items).Where(IsWanted))
        {
            cancellation.ThrowIfCancellationRequested();
            ItemRecord done = await CheckAsync(item, cancellation);
            await store.SaveItemsAsync([done], cancellation);
            looked.Add(done);
        }

        return new(looked);
    }

    private static bool IsWanted(ItemRecord item) => item.ArtworkPath.Length > 0 && item.State switch
    {
        ItemState.Waiting => true,
        ItemState.Stopped => item.Artwork is null || item.Faults.Any(f => !IsOfLine(f)),
        _ => false,
    };

    private async Task<ItemRecord> CheckAsync(ItemRecord item, CancellationToken cancellation)
    {
        List<InputFault> faults = [.. item.Faults.Where(IsOfLine)];
        Reading<ArtworkFile> reading = await ReadAsync(item, cancellation);
        if (!reading.IsTaken)
            return item with { State = ItemState.Stopped, Artwork = null, Faults = [.. faults, .. reading.Faults] };

        // All is looked at even where something is wrong already, so that one look shows all that must be mended.
        ArtworkFile artwork = reading.Value;
        faults.AddRange(await PreviewsAsync(item, artwork, cancellation));
        Reading<PressChoice> press = PressChooser.Choose(ReadyItems.Of(item.Item, item.OrderId, artwork), PressRooms.Of(catalogue));
        if (faults.TrueForAll(f => !IsOfLine(f)))
            faults.AddRange(press.Faults);
        IReadOnlyList<Finding> findings =
        [
            .. ArtworkChecks.Run(artwork, CheckWishes.Of(item.Item, press.Match<PressChoice?>(p => p, _ => null))),
            .. press.Match(p => StackJudge.Judge(p.Stack, p.Stock, p.Press.MaxLayers), _ => []),
        ];
        bool stop = faults.Count > 0 || findings.Any(f => f.Severity == Severity.Stop);
        return item with
        {
            State = stop ? ItemState.Stopped : ItemState.Ready,
            Artwork = artwork,
            Faults = faults,
            Findings = findings,
            Stack = press.Match<Laydown.Press.Stacks.LayerStack?>(p => p.Stack, _ => null),
        };
    }

    private async Task<Reading<ArtworkFile>> ReadAsync(ItemRecord item, CancellationToken cancellation)
    {
        Reading<ArtworkFile> front = await reader.ReadAsync(item.ArtworkPath, cancellation);
        if (!front.IsTaken || item.BackPath is not { } path)
            return front;
        Reading<ArtworkFile> back = await reader.ReadAsync(path, cancellation);
        return back.Then(file => Reading.Of(JoinedArtwork.Of(front.Value, file)));
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
            (string path, int number) = item.FileOf(page.Number);
            Reading<SizeMm> made = await renderer.PreviewAsync(path, number, PreviewSidePx, png, cancellation);
            faults.AddRange(made.Faults);
        }

        return faults;
    }

    private static bool IsOfLine(InputFault fault) => string.Equals(fault.File, ItemRules.OrderFile, StringComparison.Ordinal);
}
