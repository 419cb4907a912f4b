using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Separation;

/// <summary>Splits inks into dark and light; the light inks come out behind the others, in the order of the pairs.</summary>
/// <param name="pairs">Plane of each dark ink with its split.</param>
public sealed class LightInks(IReadOnlyList<(int DarkInk, LightInkSplit Split)> pairs) : ITileStage
{
    private readonly IReadOnlyList<(int DarkInk, LightInkSplit Split)> pairs = Bounds.NotEmpty(pairs);

    /// <summary>No neighbours needed.</summary>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks + pairs.Count;

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int ink = 0; ink < source.Inks; ink++)
        {
            for (int row = 0; row < source.Rows; row++)
                source.Row(ink, row).CopyTo(target.Row(ink, row));
        }

        for (int pair = 0; pair < pairs.Count; pair++)
        {
            for (int row = 0; row < source.Rows; row++)
            {
                int ink = pairs[pair].DarkInk;
                LightInkSplit split = pairs[pair].Split;
                LookUps.Run(source.Row(ink, row), split.Light, target.Row(source.Inks + pair, row));
                LookUps.Run(source.Row(ink, row), split.Dark, target.Row(ink, row));
            }
        }
    }
}
