using Laydown.Artwork.Pages;
using Laydown.Colour.Inversion;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Raster.Tiles;
using Laydown.Shop.Artwork;
using Laydown.Shop.Orders;

namespace Laydown.Output.PressFiles;

/// <summary>Makes the laydown of every layer of an item: each page rendered once, then every layer that comes from it.</summary>
internal sealed class ItemLayers(IPageRenderer renderer, PrintCondition condition, InkSet inkSet, string profilePath)
{
    private const int BandRows = 64;

    /// <summary>Takes the finished layers: a sink for bands from several threads.</summary>
    /// <param name="layer">Layer from 0 in the stack.</param>
    /// <param name="recipe">How it was made.</param>
    /// <param name="rows">Pixels down.</param>
    /// <param name="columns">Pixels across.</param>
    public delegate ITileSink SinkOf(int layer, LayerRecipe recipe, int rows, int columns);

    /// <summary>Runs all layers of an item at a resolution.</summary>
    /// <param name="item">The item; its artwork must have been read.</param>
    /// <param name="stack">Its layers.</param>
    /// <param name="ppi">Resolution, ppi.</param>
    /// <param name="sinkOf">Gives the place each layer goes to.</param>
    /// <param name="done">Told the share of the item that is done, 0 to 1.</param>
    /// <param name="cancellation">Looked at before each band.</param>
    /// <returns>How many layers were made, or why one cannot be.</returns>
    public async Task<Reading<int>> RunAsync(
        ItemRecord item, LayerStack stack, double ppi, SinkOf sinkOf, Action<double> done, CancellationToken cancellation)
    {
        if (item.Artwork is null)
            return Reading.Refused<int>(new InputFault(item.Item.Artwork, null, "artwork", "a file that could not be read", "an artwork that was taken"));
        Reading<IReadOnlyList<LinkTables>> link = InkLinks.Of(condition, profilePath);
        if (!link.IsTaken)
            return Reading.Refused<int>(link.Faults);
        LayerRecipes recipes = new(condition, inkSet, link.Value.Count > 0 ? link.Value[0] : null);
        int made = 0;
        foreach (int page in stack.Layers.Select(l => l.ArtworkPage).Distinct().Order())
        {
            (string path, int number) = item.FileOf(page);
            RenderRequest request = new(path, number, item.Item.Printed, item.Item.BleedMm, ppi, profilePath);
            Reading<RenderedPage> rendered = await renderer.RenderAsync(request, cancellation);
            if (!rendered.IsTaken)
                return Reading.Refused<int>(rendered.Faults);
            using RenderedPage plates = rendered.Value;
            done((made + 0.5) / stack.Layers.Count);
            Reading<int> layers = RunPage(item, stack, recipes, page, plates, ppi, sinkOf, cancellation);
            if (!layers.IsTaken)
                return layers;
            made += layers.Value;
            done(made / (double)stack.Layers.Count);
        }

        return Reading.Of(made);
    }

    private static Reading<int> RunPage(
        ItemRecord item, LayerStack stack, LayerRecipes recipes, int page, RenderedPage plates, double ppi, SinkOf sinkOf,
        CancellationToken cancellation)
    {
        using PlatePicture picture = new(plates);
        IReadOnlyList<NamedSeparation> separations = item.Artwork?.Pages.FirstOrDefault(p => p.Number == page)?.Separations ?? [];
        IReadOnlyList<InputFault> lost = LostPlates.Of(item.Item.Artwork, page, picture, plates.Plates, separations, stack);
        if (lost.Count > 0)
            return Reading.Refused<int>(lost);
        PressPixels pixels = PressPixels.Of(item.Item, ppi);
        int made = 0;
        for (int layer = 0; layer < stack.Layers.Count; layer++)
        {
            if (stack.Layers[layer].ArtworkPage != page)
                continue;
            Reading<LayerRecipe> recipe = recipes.Of(item.Item.Artwork, stack.Layers[layer], plates.Plates, separations, pixels);
            if (!recipe.IsTaken)
                return Reading.Refused<int>(recipe.Faults);
            ITileSink sink = sinkOf(layer, recipe.Value, picture.Rows, picture.Columns);
            AllCores.RunBands(picture, recipe.Value, BandRows, sink, cancellation);
            made++;
        }

        return Reading.Of(made);
    }
}
