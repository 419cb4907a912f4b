using System.Text.Json;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Shop.Artwork;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Shop.Colour;

/// <summary>Tells before the print how far the colours of an item's artwork move, where, and what it will look like.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="store">Items.</param>
/// <param name="renderer">Makes pictures of pages.</param>
/// <param name="pictures">Reads and writes pictures.</param>
/// <param name="files">Reads.</param>
public sealed class MapShift(ShopFolder folder, IShopStore store, IPageRenderer renderer, IScreenPictures pictures, IColourFiles files)
{
    private const int PreviewSidePx = 1400;
    private const int SidePx = 700;

    /// <summary>The shift of one page; pictures are kept beside the previews and made once for each model and artwork.</summary>
    /// <param name="itemId">The item.</param>
    /// <param name="page">Page from 1.</param>
    /// <param name="conditionId">Print condition; null for the first fitted one of the item's stock.</param>
    /// <param name="cancellation">Stops between rows.</param>
    public async Task<Reading<ItemShift>> MapAsync(string itemId, int page, string? conditionId, CancellationToken cancellation)
    {
        ItemRecord? item = await store.ItemAsync(itemId, cancellation);
        if (item?.Artwork is null || !item.Artwork.Pages.Any(p => p.Number == page))
            return Refused("item", Invariant($"no measured page {page} of '{itemId}'"), "an item of this shop whose artwork was measured");
        ConditionShelf shelf = new(folder, files);
        string? condition = conditionId ?? shelf.All().FirstOrDefault(c => c.Characterisation is not null && c.StockIds.Contains(item.Item.StockId))?.Id;
        if (condition is null)
            return Refused("print condition", Invariant($"none for {item.Item.StockId} that was fitted"), "a print condition fitted to readings");
        Reading<(string Path, PrintCondition Condition, PrintModel Print)> fitted = shelf.Fitted(condition);
        if (!fitted.IsTaken)
            return Reading.Refused<ItemShift>(fitted.Faults);

        string stem = Path.Combine(folder.Previews, Invariant($"{item.Artwork.Sha256}-p{page}-{condition}-{Mark(fitted.Value.Condition)}"));
        if (Known(stem + ".json", itemId) is { } known)
            return Reading.Of(known);
        string preview = folder.Preview(item.Artwork.Sha256, page);
        if (!File.Exists(preview))
        {
            Directory.CreateDirectory(folder.Previews);
            Reading<SizeMm> made = await renderer.PreviewAsync(item.FileOf(page).Path, item.FileOf(page).Page, PreviewSidePx, preview, cancellation);
            if (!made.IsTaken)
                return Reading.Refused<ItemShift>(made.Faults);
        }

        Reading<RgbPicture> picture = pictures.Read(preview, SidePx);
        return picture.IsTaken
            ? await MakeAsync(itemId, page, fitted.Value.Condition, fitted.Value.Print, picture.Value, stem, cancellation)
            : Reading.Refused<ItemShift>(picture.Faults);
    }

    private async Task<Reading<ItemShift>> MakeAsync(
        string itemId, int page, PrintCondition condition, PrintModel print, RgbPicture picture, string stem, CancellationToken cancellation)
    {
        SeparationWish wish = SeparationWish.OfCondition(SeparationWish.Usual, condition, print);
        Reading<Laydown.Colour.Inversion.InkLimits> limits = wish.Limits(print.InkNames);
        if (!limits.IsTaken)
            return Reading.Refused<ItemShift>(limits.Faults);
        (RgbPicture proof, RgbPicture map, double[] shift) = await Task.Run(
            () => new ShiftPixels(print, limits.Value, wish.Policy()).Run(picture, cancellation), cancellation);
        ItemShift told = new(
            itemId, page, condition.Id, shift.Average(), shift.Max(), Share(shift, 2), Share(shift, 4), Share(shift, 6),
            stem + "-page.png", stem + "-proof.png", stem + "-map.png");
        await WholeFile.WriteAsync(told.PicturePath, pictures.Png(picture), cancellation);
        await WholeFile.WriteAsync(told.ProofPath, pictures.Png(proof), cancellation);
        await WholeFile.WriteAsync(told.MapPath, pictures.Png(map), cancellation);
        await WholeFile.WriteAsync(stem + ".json", JsonSerializer.SerializeToUtf8Bytes(told, ShopJson.Readable), cancellation);
        return Reading.Of(told);
    }

    // Another item may carry the same artwork, and the shop's folder may have moved.
    private static ItemShift? Known(string path, string itemId)
    {
        try
        {
            string stem = path[..^".json".Length];
            return File.Exists(path) && JsonSerializer.Deserialize<ItemShift>(File.ReadAllBytes(path), ShopJson.Readable) is { } known
                ? known with { ItemId = itemId, PicturePath = stem + "-page.png", ProofPath = stem + "-proof.png", MapPath = stem + "-map.png" }
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    // What the shift depends on: the model and the limits.
    private static string Mark(PrintCondition condition) => ConditionShelf.Mark(JsonSerializer.SerializeToUtf8Bytes(
        new { condition.Characterisation!.Folder, condition.TotalLimitPercent, Limits = condition.Inks.Select(i => i.LimitPercent) }, ShopJson.Compact));

    private static double Share(double[] shift, double over) => 100.0 * shift.Count(s => s > over) / shift.Length;

    private static Reading<ItemShift> Refused(string field, string found, string wanted) =>
        Reading.Refused<ItemShift>(new InputFault("shop", null, field, found, wanted));
}
