using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Draws a mask in (choke) or out (spread) by an exact Euclidean distance.</summary>
/// <remarks>
/// Choke: each pixel becomes the least value within the disc around it; spread: the greatest. On a mask of bare and full pixels that is: full
/// pixels within the distance of a bare one become bare. Antialiased edges move and keep their grey. What lies outside the picture does not count.
/// Masks of bare and full take a way in time independent of the radius; others one that grows with it; both give the same result.
/// </remarks>
public sealed class Choke : ITileStage
{
    private readonly Disc disc;
    private readonly bool spread;

    /// <summary>A choke, or a spread where negative.</summary>
    /// <param name="radiusPixels">Distance, pixels, −4096 to 4096; parts of a pixel count.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance is outside the range.</exception>
    public Choke(double radiusPixels)
    {
        disc = new(Math.Abs(radiusPixels));
        spread = radiusPixels < 0;
    }

    /// <summary>As far as the disc.</summary>
    public int ReachPixels => disc.Reach;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks;

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int ink = 0; ink < source.Inks; ink++)
        {
            if (IsBareAndFull(source, ink))
                new TwoLevelChoke(disc, spread).Run(source, target, ink);
            else
                new GreyChoke(disc, spread).Run(source, target, ink);
        }
    }

    private static bool IsBareAndFull(Tile tile, int ink)
    {
        for (int row = 0; row < tile.Rows; row++)
        {
            if (tile.Row(ink, row).ContainsAnyExcept((ushort)0, Tile.Full))
                return false;
        }

        return true;
    }
}
