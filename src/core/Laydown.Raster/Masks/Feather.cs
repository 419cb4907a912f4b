using System.Runtime.Intrinsics;
using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Lets the edge of a mask fade, by an exact Euclidean distance.</summary>
/// <remarks>
/// Inward: a pixel whose nearest bare pixel is d away, from centre to centre, keeps at most Full × (d − ½) / W, to the nearest code. The edge lies half
/// a pixel from the centre of the bare pixel, so ink starts at nothing at the edge and is full W inside it; bare stays bare. Outward is the same on the
/// inverse: ink is full up to the edge of what is full and ends W outside it. What lies outside the picture does not count.
/// Grey pixels count as neither bare nor full: inward they keep their value where more is allowed.
/// </remarks>
public sealed class Feather : ITileStage
{
    private readonly Disc disc;
    private readonly Action<Tile, Tile, int> feather;

    /// <summary>A feather.</summary>
    /// <param name="widthPixels">Width W of the fade, pixel widths, 0 to 2048; parts of a pixel count. Up to half a pixel changes nothing of a mask of two levels.</param>
    /// <param name="inward">Whether it fades inside the edge; else outside.</param>
    /// <param name="shape">Shape of a pixel; null for square.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is outside the range.</exception>
    public Feather(double widthPixels, bool inward, PixelShape? shape = null)
        : this(widthPixels, inward, shape, LanesHere.Best)
    {
    }

    internal Feather(double widthPixels, bool inward, PixelShape? shape, Lanes lanes)
    {
        shape ??= PixelShape.Square;
        disc = new(Bounds.Within(widthPixels, 0, 2048) + 0.5, shape);
        Ramp ramp = new(widthPixels, shape);

        // The longest fades go one pixel after the other: their time does not depend on the width, that of the many columns does.
        feather = (ramp.FitsTable ? lanes : Lanes.Plain, ramp.FitsShort) switch
        {
            (Lanes.Wide512, true) => new WideFeather<Words512, Vector512<ushort>, ushort>(disc, ramp, shape, inward).Run,
            (Lanes.Wide512, false) => new WideFeather<Longs512, Vector512<uint>, uint>(disc, ramp, shape, inward).Run,
            (Lanes.Wide256, true) => new WideFeather<Words256, Vector256<ushort>, ushort>(disc, ramp, shape, inward).Run,
            (Lanes.Wide256, false) => new WideFeather<Longs256, Vector256<uint>, uint>(disc, ramp, shape, inward).Run,
            _ => new PlainFeather(disc, ramp, shape, inward).Run,
        };
    }

    /// <summary>As far as the fade.</summary>
    public int ReachPixels => disc.Reach;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks;

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int ink = 0; ink < source.Inks; ink++)
            feather(source, target, ink);
    }
}
