using Laydown.Measures;
using Laydown.Output.Layers;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Raster.Sums;
using Laydown.Raster.Tiles;
using Laydown.Shop.Artwork;
using Laydown.Shop.Colour;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;

namespace Laydown.Output.PressFiles;

/// <summary>Measures how much ink a piece takes: the stages of the press files at a low resolution.</summary>
/// <remarks>Mean laydown hardly depends on the resolution, because rendering keeps areas; a choke is exact to half a pixel of it.</remarks>
/// <param name="renderer">Renders pages.</param>
/// <param name="looks">Looks of the shop; null where no item is printed from one.</param>
/// <param name="opticsOf">Optics that hold for a print condition; null where no ink has any.</param>
public sealed class InkMeasure(IPageRenderer renderer, LookShelf? looks = null, Func<PrintCondition, InkOptics?>? opticsOf = null) : IInkMeasure
{
    private const double MostPpi = 50;
    private const double LeastPpi = 10;
    private const double PixelBudget = 1_500_000;

    /// <inheritdoc/>
    public async Task<Reading<IReadOnlyList<LayerInk>>> MeasureAsync(
        ItemRecord item, PrintCondition condition, InkSet inkSet, string profilePath, CancellationToken cancellation)
    {
        if (item.Stack is null)
            return Refused(item, "stack", "none", "layers derived before ink is measured");
        Dictionary<int, (IReadOnlyList<InkPlane> Planes, InkSums Sums)> layers = [];
        ITileSink SinkOf(int layer, IReadOnlyList<InkPlane> planes)
        {
            InkSums sums = new(planes.Count);
            layers[layer] = (planes, sums);
            return sums;
        }

        try
        {
            Reading<int> made = item.LookId is null
                ? await new ItemLayers(renderer, condition, inkSet, profilePath).RunAsync(
                    item, item.Stack, PpiFor(item), (layer, recipe, _, _) => SinkOf(layer, recipe.Planes), _ => { }, cancellation)
                : await Task.Run(
                    () => ChosenLook.Of(item, looks).Then(look => ChosenLooks.Run(
                        look, condition.Id, 0, 0, opticsOf?.Invoke(condition), (layer, planes, _) => SinkOf(layer, planes), _ => { }, cancellation)),
                    cancellation);
            return made.Then(_ => Reading.Of<IReadOnlyList<LayerInk>>(
                [.. layers.OrderBy(l => l.Key).SelectMany(l => InksOf(l.Key, l.Value.Planes, l.Value.Sums))]));
        }
        catch (Exception e) when (e is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            return Refused(item, "plates", e.Message, "plates that can be read");
        }
    }

    private static double PpiFor(ItemRecord item) =>
        Math.Clamp(Math.Sqrt(PixelBudget / Math.Max(1e-9, item.Item.Printed.AreaM2 * 1e6)) * 25.4, LeastPpi, MostPpi);

    private static IEnumerable<LayerInk> InksOf(int layer, IReadOnlyList<InkPlane> planes, InkSums sums) =>
        planes.Select((plane, ink) => (plane.Role, Mean: sums.Mean(ink)))
            .GroupBy(p => p.Role)
            .Select(g => new LayerInk(layer, g.Key, g.Sum(p => p.Mean), sums.MaxTotal));

    private static Reading<IReadOnlyList<LayerInk>> Refused(ItemRecord item, string field, string found, string wanted) =>
        Reading.Refused<IReadOnlyList<LayerInk>>(new InputFault(item.Item.Artwork, null, field, found, wanted));
}
