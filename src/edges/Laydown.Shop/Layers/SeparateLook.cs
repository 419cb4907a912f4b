using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Shop.Layers;

/// <summary>Makes a look of any item from its pages, separated as its press files would be.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Items.</param>
/// <param name="shelf">The looks.</param>
/// <param name="planes">Separates.</param>
/// <param name="pictures">Writes pictures.</param>
/// <param name="clock">Tells the time.</param>
public sealed class SeparateLook(
    Catalogue catalogue, IShopStore store, LookShelf shelf, IItemPlanes planes, ILookPictures pictures, TimeProvider clock)
{
    /// <summary>Makes the look; on failure or cancel nothing of it is left.</summary>
    /// <param name="itemId">The item; its artwork was measured.</param>
    /// <param name="conditionId">Print condition; null for the one the item would be printed in.</param>
    /// <param name="ppi">Resolution, 10 to 600 ppi.</param>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    /// <param name="cancellation">Stops it within a band.</param>
    public async Task<Reading<LookRecord>> SeparateAsync(
        string itemId, string? conditionId, double ppi, IProgress<double>? progress, CancellationToken cancellation)
    {
        Bounds.Within(ppi, 10, 600);
        ItemRecord? item = await store.ItemAsync(itemId, cancellation);
        Reading<ItemPress> press = item?.Artwork is null
            ? Reading.Refused<ItemPress>(new InputFault(Invariant($"item {itemId}"), null, "item", "none whose artwork was measured", "an item of this shop that was checked"))
            : ItemPress.Of(item, conditionId, catalogue);
        if (!press.IsTaken || item is null)
            return Reading.Refused<LookRecord>(press.Faults);
        try
        {
            using LookDraft draft = shelf.Begin(itemId);
            Reading<ItemPlanes> made = await planes.WriteAsync(
                item, press.Value.Stack, press.Value.Condition, press.Value.InkSet, RunContexts.ProfilePath(catalogue, press.Value.Condition), ppi,
                draft.File(LookRecord.PlanesFile), progress is null ? null : new PartOf(progress, 0, 0.9), cancellation);
            return made.IsTaken
                ? await KeepAsync(item, press.Value, ppi, made.Value, draft, cancellation)
                : Reading.Refused<LookRecord>(made.Faults);
        }
        catch (Exception e) when (e is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            return Reading.Refused<LookRecord>(new InputFault(Invariant($"item {itemId}"), null, "disk", e.Message, "room for a look and leave to write it"));
        }
    }

    private async Task<Reading<LookRecord>> KeepAsync(
        ItemRecord item, ItemPress press, double ppi, ItemPlanes made, LookDraft draft, CancellationToken cancellation)
    {
        (Scene day, Scene night) = press.Scenes();
        LookRecord record = new(
            item.Item.Id, "", clock.GetUtcNow(), LookHow.Separated, made.WidthPx, made.HeightPx, ppi, item.Item.Printed, item.Item.BleedMm, made.Layers,
            press.Stock.Id, press.InkSet.Id, press.Condition.Id, LookLights.IsGeneric(made.Layers, press.InkSet, catalogue.OpticsOf(press.Condition)),
            Laydown.Press.Stacks.SheetFace.First, LookScene.Of(day), LookScene.Of(night), item.Artwork?.Sha256, null, null, null, null,
            StackLights.Missing(made.Layers.SelectMany(l => l.Inks).Select(i => i.Role), press.InkSet, catalogue.OpticsOf(press.Condition)), [], null);
        Reading<LookOptics> optics = new LookLights(catalogue).Of(record);
        if (!optics.IsTaken)
            return Reading.Refused<LookRecord>(optics.Faults);
        await LookProofs.WriteAsync(record, optics.Value, draft, pictures, null, cancellation);
        return Reading.Of(await draft.PublishAsync(record with { Files = await draft.FilesAsync(cancellation) }, cancellation));
    }
}
