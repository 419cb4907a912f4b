using Laydown.Measures;
using Laydown.Output.PressFiles;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Raster.Tiles;
using Laydown.Shop.Artwork;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;

namespace Laydown.Output.Layers;

/// <summary>Separates an item into the planes of a look: the stages of its press files, without mirroring.</summary>
/// <param name="renderer">Renders pages.</param>
public sealed class ItemPlaneFiles(IPageRenderer renderer) : IItemPlanes
{
    private const int CopyBytes = 1 << 20;

    /// <inheritdoc/>
    public async Task<Reading<ItemPlanes>> WriteAsync(
        ItemRecord item, LayerStack stack, PrintCondition condition, InkSet inkSet, string profilePath, double ppi, string planesPath,
        IProgress<double>? progress, CancellationToken cancellation)
    {
        SortedDictionary<int, (PlaneFile File, LookedLayer Layer)> layers = [];
        ITileSink SinkOf(int layer, LayerRecipe recipe, int rows, int columns)
        {
            // Scratch of a layer lies beside the planes, in a folder that is whole or absent.
            PlaneFile file = new(Invariant($"{planesPath}.{layer}"), recipe.Planes.Count, rows, columns, recipe.LimitPercent, mirrored: false);
            layers[layer] = (file, new(
                stack.Layers[layer].Face, stack.Layers[layer].Group, recipe.LimitPercent, [.. recipe.Planes.Select(p => new LookPlane(p.Role, p.Name))]));
            return file;
        }

        try
        {
            ItemLayers maker = new(renderer, condition, inkSet, profilePath);
            Reading<int> made = await maker.RunAsync(item, stack, ppi, SinkOf, share => progress?.Report(share * 0.9), cancellation);
            if (!made.IsTaken)
                return Reading.Refused<ItemPlanes>(made.Faults);
            Join([.. layers.Values.Select(l => l.File)], planesPath, cancellation);
            progress?.Report(1);
            PlaneFile first = layers[0].File;
            return Reading.Of(new ItemPlanes(first.Columns, first.Rows, [.. layers.Values.Select(l => l.Layer)]));
        }
        finally
        {
            foreach ((PlaneFile file, _) in layers.Values)
                file.Dispose();
        }
    }

    private static void Join(IReadOnlyList<PlaneFile> layers, string path, CancellationToken cancellation)
    {
        using FileStream target = new(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, CopyBytes);
        foreach (PlaneFile layer in layers)
        {
            byte[] row = new byte[layer.Columns];
            for (int ink = 0; ink < layer.Inks; ink++)
            {
                cancellation.ThrowIfCancellationRequested();
                for (int y = 0; y < layer.Rows; y++)
                {
                    layer.ReadRow(ink, y, 0, row);
                    target.Write(row);
                }
            }
        }
    }
}
