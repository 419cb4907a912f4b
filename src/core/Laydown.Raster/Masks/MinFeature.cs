using System.Collections.Concurrent;
using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Takes out parts of a mask that are too narrow to hold: ink narrower than a width, or gaps in it.</summary>
/// <remarks>
/// Opening by an exact disc: a choke and a spread by the same distance, so that ink into which the disc fits stays as it was to the pixel, and other ink goes.
/// For gaps the other way round (closing). The disc stands on a pixel and holds all pixels whose centres lie less than half the width away: it is an odd
/// number of pixels wide, so strips of up to 2 ⌈width ÷ 2⌉ − 2 columns go and wider ones stay. Twice changes no more than once.
/// </remarks>
public sealed class MinFeature : ITileStage
{
    private readonly Choke first;
    private readonly Choke second;
    private readonly ConcurrentBag<Tile> between = [];

    /// <summary>Takes narrow ink out, or fills narrow gaps where negative.</summary>
    /// <param name="pixels">Least width that stays, pixel widths, −4096 to 4096; up to 2 changes nothing.</param>
    /// <param name="shape">Shape of a pixel; null for square.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is outside the range.</exception>
    public MinFeature(double pixels, PixelShape? shape = null)
        : this(pixels, shape, LanesHere.Best)
    {
    }

    internal MinFeature(double pixels, PixelShape? shape, Lanes lanes)
    {
        double half = Math.Abs(Bounds.Within(pixels, -4096, 4096)) / 2;
        double radius = half > 0 ? Math.CopySign(Math.BitDecrement(half), pixels) : 0;
        first = new(radius, shape, lanes);
        second = new(-radius, shape, lanes);
    }

    /// <summary>Twice as far as the disc.</summary>
    public int ReachPixels => first.ReachPixels + second.ReachPixels;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks;

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        // The tile between is kept for the next call; each thread that is at work takes one of its own.
        Tile tile = between.TryTake(out Tile? kept) ? kept : new(1, 1, 1);
        int reach = first.ReachPixels;
        tile.Shape(source.Inks, source.Rows - (2 * reach), source.Columns - (2 * reach));
        tile.PlaceAt(source.FirstRow + reach, source.FirstColumn + reach);
        first.Run(source, tile);
        second.Run(tile, target);
        between.Add(tile);
    }
}
