using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Separation;

/// <summary>Takes some planes in a given order and drops the others.</summary>
/// <param name="planes">Planes taken, from 0.</param>
public sealed class PickInks(IReadOnlyList<int> planes) : ITileStage
{
    private readonly IReadOnlyList<int> planes = Bounds.NotEmpty(planes);

    /// <summary>No neighbours needed.</summary>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => planes.All(p => p >= 0 && p < sourceInks)
        ? planes.Count
        : throw new ArgumentException(Invariant($"Planes: found {string.Join(", ", planes)}; wanted 0 to {sourceInks - 1}."), nameof(sourceInks));

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int i = 0; i < planes.Count; i++)
        {
            for (int row = 0; row < source.Rows; row++)
                source.Row(planes[i], row).CopyTo(target.Row(i, row));
        }
    }
}
