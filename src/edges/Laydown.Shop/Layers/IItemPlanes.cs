using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Layers;

/// <summary>Separates an item's pages into the planes of its layers, through the same stages that make its press files.</summary>
public interface IItemPlanes
{
    /// <summary>Writes the planes to one raw file, as <see cref="LookRecord"/> says; mirroring is taken out.</summary>
    /// <param name="item">The item; its artwork was measured.</param>
    /// <param name="stack">Its layers.</param>
    /// <param name="condition">The print condition.</param>
    /// <param name="inkSet">The inks.</param>
    /// <param name="profilePath">Full path of the condition's profile.</param>
    /// <param name="ppi">Resolution, ppi.</param>
    /// <param name="planesPath">Full path of the file; must not exist.</param>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    /// <param name="cancellation">Looked at before each band.</param>
    Task<Reading<ItemPlanes>> WriteAsync(
        ItemRecord item, LayerStack stack, PrintCondition condition, InkSet inkSet, string profilePath, double ppi, string planesPath,
        IProgress<double>? progress, CancellationToken cancellation);
}
