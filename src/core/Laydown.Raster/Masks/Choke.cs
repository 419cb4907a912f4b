using System.Runtime.Intrinsics;
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
    private const int SoftFrom = 20;

    private readonly Disc disc;
    private readonly Action<Tile, Tile, int> twoLevels;
    private readonly Action<Tile, Tile, int> grey;

    /// <summary>A choke, or a spread where negative.</summary>
    /// <param name="radiusPixels">Distance, pixel widths, −4096 to 4096; parts of a pixel count.</param>
    /// <param name="shape">Shape of a pixel; null for square.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance is outside the range.</exception>
    public Choke(double radiusPixels, PixelShape? shape = null)
        : this(radiusPixels, shape, LanesHere.Best)
    {
    }

    internal Choke(double radiusPixels, PixelShape? shape, Lanes lanes)
    {
        disc = new(Math.Abs(radiusPixels), shape ?? PixelShape.Square);
        twoLevels = TwoLevels(lanes, disc, radiusPixels < 0);
        grey = Grey(lanes, disc, radiusPixels < 0);
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
                twoLevels(source, target, ink);
            else
                grey(source, target, ink);
        }
    }

    // Bytes hold distances up to 254 pixels and one more for far away.
    private static Action<Tile, Tile, int> TwoLevels(Lanes lanes, Disc disc, bool spread) => (lanes, disc.Reach <= 254) switch
    {
        (Lanes.Wide512, true) => new WideChoke<Bytes512, Vector512<byte>, byte>(disc, spread).Run,
        (Lanes.Wide512, false) => new WideChoke<Words512, Vector512<ushort>, ushort>(disc, spread).Run,
        (Lanes.Wide256, true) => new WideChoke<Bytes256, Vector256<byte>, byte>(disc, spread).Run,
        (Lanes.Wide256, false) => new WideChoke<Words256, Vector256<ushort>, ushort>(disc, spread).Run,
        _ => new TwoLevelChoke(disc, spread).Run,
    };

    private static Action<Tile, Tile, int> Grey(Lanes lanes, Disc disc, bool spread) => (lanes, spread) switch
    {
        (Lanes.Wide512, false) => Soft<Words512, Vector512<ushort>, LeastOf>(lanes, disc),
        (Lanes.Wide512, true) => Soft<Words512, Vector512<ushort>, GreatestOf>(lanes, disc),
        (Lanes.Wide256, false) => Soft<Words256, Vector256<ushort>, LeastOf>(lanes, disc),
        (Lanes.Wide256, true) => Soft<Words256, Vector256<ushort>, GreatestOf>(lanes, disc),
        _ => new GreyChoke(disc, spread).Run,
    };

    // Short ways are taken by grey rows at once, long ones along the seams alone; tiles narrower than two steps are not worth the choice.
    private static Action<Tile, Tile, int> Soft<TLanes, TVector, TExtreme>(Lanes lanes, Disc disc)
        where TLanes : INumberLanes<TVector, ushort>
        where TVector : struct
        where TExtreme : struct, IExtreme
    {
        WideGreyChoke<TLanes, TVector, TExtreme> grey = new(disc);
        SoftChoke soft = new(TwoLevels(lanes, disc, TExtreme.Greatest), grey.Part, grey.Widest);
        return (source, target, ink) => (disc.ReachRows < SoftFrom || target.Columns < 128 ? (Action<Tile, Tile, int>)grey.Run : soft.Run)(source, target, ink);
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
