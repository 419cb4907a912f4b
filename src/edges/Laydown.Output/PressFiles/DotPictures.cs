using Laydown.Artwork.Pages;
using Laydown.Colour.Inversion;
using Laydown.Measures;
using Laydown.Output.Layers;
using Laydown.Press.Stacks;
using Laydown.Raster.Scaling;
using Laydown.Raster.Screens;
using Laydown.Raster.Sheets;
using Laydown.Raster.Tiles;
using Laydown.Shop.Artwork;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Pictures of a run's items for the sheet engine: plates that are rendered when they are read, or the planes of a look.</summary>
internal sealed class DotPictures : IAsyncDisposable
{
    private const int RenderedAtOnce = 2;

    // Half of full laydown within seven dots is an edge that was drawn, not a blend: own choice.
    private const double EdgePercent = 50;

    private readonly RunContext context;
    private readonly IPlateStream stream;
    private readonly LayerRecipes recipes;
    private readonly CancellationToken cancellation;
    private readonly Dictionary<(string Item, int Page), LatePlates> plates = [];
    private readonly Dictionary<string, LookPlanes> looks = [];

    private DotPictures(RunContext context, IPlateStream stream, LinkTables? link, CancellationToken cancellation)
    {
        this.context = context;
        this.stream = stream;
        this.cancellation = cancellation;
        recipes = new(context.Condition, context.InkSet, link);
    }

    /// <summary>The pictures of a run; nothing is rendered yet.</summary>
    public static Reading<DotPictures> Of(RunContext context, IPlateStream stream, CancellationToken cancellation) =>
        InkLinks.Of(context.Condition, context.ProfilePath)
            .Then(link => Reading.Of(new DotPictures(context, stream, link.Count > 0 ? link[0] : null, cancellation)));

    /// <summary>Planes of a layer, which all items of the run share, or why they do not.</summary>
    /// <param name="layer">Layer from 0.</param>
    public Reading<IReadOnlyList<InkPlane>> InksOf(int layer)
    {
        IReadOnlyList<InkPlane>? inks = null;
        foreach (ItemRecord item in context.Items)
        {
            Reading<IReadOnlyList<InkPlane>> own = PlanesOf(item, layer);
            if (!own.IsTaken)
                return own;
            inks ??= own.Value;
            if (InkAgreement.Fault(context, item, layer, own.Value.Count, inks) is { } fault)
                return Reading.Refused<IReadOnlyList<InkPlane>>(fault);
        }

        return Reading.Of(inks ?? []);
    }

    /// <summary>The picture of an item's layer.</summary>
    /// <param name="placed">The item and the size it has.</param>
    /// <param name="layer">Layer from 0.</param>
    public Reading<SheetPicture> Of(PlacedPicture placed, int layer) => Whole(placed, layer).Then(whole =>
        Reading.Of(ContourClip.Of(context, ItemOf(placed.ItemId), placed.Rows, placed.Columns) is { } within
            ? new SheetPicture(whole.Plates, whole.Columns, whole.Rows, whole.Kernel, whole.AtSource, [.. whole.AtPress, within])
            : whole));

    private Reading<SheetPicture> Whole(PlacedPicture placed, int layer)
    {
        ItemRecord item = ItemOf(placed.ItemId);
        if (item.LookId is not null)
            return LookOf(item).Then(look => ChosenLooks.Picture(look, LookPlanesOf(item, look), context.Optics, layer, placed.Columns, placed.Rows));
        Layer printed = InkAgreement.StackOf(context, item).Layers[layer];
        LatePlates source = PlatesOf(item, printed.ArtworkPage);
        return RecipeOf(item, printed, source.Names, placed.Turned).Then(recipe =>
        {
            bool same = source.Rows == placed.Rows && source.Columns == placed.Columns;
            IReadOnlyList<ITileStage> atPress = same && recipe.PressRepeats ? [] : recipe.AtPress;
            if (!same && printed.Group == InkGroup.Colour && HoldsEdges(item, printed.ArtworkPage))
                atPress = [new SharpEdges(EdgePercent, FlankOf(source, placed)), .. atPress];
            return Reading.Of(new SheetPicture(source, placed.Columns, placed.Rows, ScaleKernel.CatmullRom, recipe.AtSource, atPress));
        });
    }

    /// <summary>Plates that pieces of a sheet need, in the order of the pieces from the top of the sheet.</summary>
    public IReadOnlyList<LatePlates> PlatesOf(SheetDots sheet) =>
    [
        .. sheet.Pieces.OrderBy(p => p.Top).Select(p => ItemOf(sheet.Pictures[p.Picture].ItemId)).Distinct()
            .Where(i => i.LookId is null)
            .SelectMany(i => InkAgreement.StackOf(context, i).Layers.Select(l => l.ArtworkPage).Distinct().Order().Select(page => PlatesOf(i, page))),
    ];

    /// <summary>Renders plates one after the other, two at a time, ahead of those who read them.</summary>
    public static async Task RenderAheadAsync(IReadOnlyList<LatePlates> wanted, CancellationToken cancellation)
    {
        List<Task> running = [];
        foreach (LatePlates page in wanted)
        {
            if (cancellation.IsCancellationRequested)
                return;
            await page.BeginAsync().ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            running.Add(page.EndedAsync());
            if (running.Count >= RenderedAtOnce)
                running.Remove(await Task.WhenAny(running));
        }

        await Task.WhenAll(running).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
    }

    /// <summary>What went wrong with plates of a sheet that were read: pages that did not render to their end, inks that no layer prints.</summary>
    public async Task<IReadOnlyList<InputFault>> FaultsAsync(SheetDots sheet)
    {
        List<InputFault> faults = [];
        foreach (ItemRecord item in sheet.Pictures.Select(p => ItemOf(p.ItemId)).Distinct().Where(i => i.LookId is null))
        {
            LayerStack stack = InkAgreement.StackOf(context, item);
            foreach (int page in stack.Layers.Select(l => l.ArtworkPage).Distinct())
            {
                LatePlates late = PlatesOf(item, page);
                IReadOnlyList<InputFault> ended = await late.EndedAsync();
                faults.AddRange(ended);
                if (ended.Count == 0 && await late.CameAsync() is { } came)
                    faults.AddRange(LostPlates.Of(item.Item.Artwork, page, came.Source, came.Names, SeparationsOf(item, page), stack));
            }
        }

        return faults;
    }

    /// <summary>Lets go of the plates of items that are not on later sheets.</summary>
    /// <param name="later">Sheets that are still to be made.</param>
    public async Task ReleaseAsync(IEnumerable<SheetDots> later)
    {
        HashSet<string> wanted = [.. later.SelectMany(s => s.Pictures).Select(p => p.ItemId)];
        foreach ((string Item, int Page) key in plates.Keys.Where(k => !wanted.Contains(k.Item)).ToList())
        {
            await plates[key].DisposeAsync();
            plates.Remove(key);
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await ReleaseAsync([]);
        foreach (LookPlanes look in looks.Values)
            look.Dispose();
    }

    private Reading<IReadOnlyList<InkPlane>> PlanesOf(ItemRecord item, int layer)
    {
        if (item.LookId is not null)
        {
            return LookOf(item).Then(look => ChosenLooks.Checked(look, context.Condition.Id, cancellation)).Then(look =>
                Reading.Of<IReadOnlyList<InkPlane>>([.. look.Record.Layers[layer].Inks.Select(i => new InkPlane(i.Role, i.Name))]));
        }

        if (item.Artwork is null)
        {
            return Reading.Refused<IReadOnlyList<InkPlane>>(new InputFault(
                item.Item.Artwork, null, "artwork", "a file that could not be read", "an artwork that was taken"));
        }

        Layer printed = InkAgreement.StackOf(context, item).Layers[layer];
        return RecipeOf(item, printed, NamesOf(item, printed.ArtworkPage), turned: false).Then(r => Reading.Of(r.Planes));
    }

    private Reading<LayerRecipe> RecipeOf(ItemRecord item, Layer layer, IReadOnlyList<string> names, bool turned)
    {
        (int across, int down) = turned ? (context.Mode.FeedDpi, context.Mode.ScanDpi) : (context.Mode.ScanDpi, context.Mode.FeedDpi);
        return recipes.Of(item.Item.Artwork, layer, names, SeparationsOf(item, layer.ArtworkPage), PressPixels.Of(item.Item, across, down));
    }

    private LatePlates PlatesOf(ItemRecord item, int page)
    {
        if (!plates.TryGetValue((item.Item.Id, page), out LatePlates? late))
        {
            (string path, int number) = item.FileOf(page);
            RenderRequest request = new(
                path, number, item.Item.Printed, item.Item.BleedMm, PlateResolution.Of(context.Mode, item, page), context.ProfilePath);
            HashSet<string> needed = [.. NeededOf(item, page)];
            plates[(item.Item.Id, page)] = late = new(stream, request, NamesOf(item, page), needed, cancellation);
        }

        return late;
    }

    private List<string> NamesOf(ItemRecord item, int page)
    {
        List<string> names = ["Cyan", "Magenta", "Yellow", "Black"];
        foreach (string name in SeparationsOf(item, page).Select(s => s.Name).Concat(NeededOf(item, page)))
        {
            if (!names.Contains(name, StringComparer.OrdinalIgnoreCase))
                names.Add(name);
        }

        return names;
    }

    // Two pixels of the source on each side of an edge are soft at most.
    private static int FlankOf(LatePlates source, PlacedPicture placed) =>
        (int)Math.Clamp(Math.Ceiling(2 * Math.Max((double)placed.Columns / source.Columns, (double)placed.Rows / source.Rows)), 3, 64);

    // Bars and letters that are enlarged keep hard flanks; a page with neither keeps the soft ones of its pictures.
    private static bool HoldsEdges(ItemRecord item, int page) =>
        item.Artwork?.Pages.FirstOrDefault(p => p.Number == page) is { } measured && measured.Codes.Count + measured.SmallestTexts.Count > 0;

    private IEnumerable<string> NeededOf(ItemRecord item, int page) => InkAgreement.StackOf(context, item).Layers
        .Where(l => l.ArtworkPage == page && l.Group != InkGroup.Colour)
        .Select(l => l.Source switch { WhiteSource.NamedSeparation => l.SeparationName, WhiteSource.Alpha => "Alpha", _ => null })
        .OfType<string>();

    private static IReadOnlyList<NamedSeparation> SeparationsOf(ItemRecord item, int page) =>
        item.Artwork?.Pages.FirstOrDefault(p => p.Number == page)?.Separations ?? [];

    private Reading<StoredLook> LookOf(ItemRecord item) => context.Looks.GetValueOrDefault(item.Item.Id) is { } look
        ? Reading.Of(look)
        : Reading.Refused<StoredLook>(new InputFault(
            item.Item.Artwork, null, "look", Invariant($"{item.LookId}, which is not at hand"), "the look the item is printed from"));

    private LookPlanes LookPlanesOf(ItemRecord item, StoredLook look)
    {
        if (!looks.TryGetValue(item.Item.Id, out LookPlanes? planes))
            looks[item.Item.Id] = planes = new(look.Record, look.Folder);
        return planes;
    }

    private ItemRecord ItemOf(string itemId) => context.Items.First(i => i.Item.Id == itemId);
}
