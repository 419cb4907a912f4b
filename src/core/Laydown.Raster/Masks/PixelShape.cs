using System.Numerics;
using Laydown.Measures;

namespace Laydown.Raster.Masks;

/// <summary>How high a pixel is for its width, in whole units, so that distances in millimetres stay exact where a press has other dots across than along.</summary>
public sealed record PixelShape
{
    /// <summary>The shape of a dot.</summary>
    /// <param name="acrossDpi">Dots per inch across, 1 to 100 000.</param>
    /// <param name="alongDpi">Dots per inch along, 1 to 100 000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is outside its range, or the two share so little that a side is over 100 units.</exception>
    public PixelShape(int acrossDpi, int alongDpi)
    {
        int common = (int)BigInteger.GreatestCommonDivisor(Bounds.Within(acrossDpi, 1, 100_000), Bounds.Within(alongDpi, 1, 100_000));
        Width = Bounds.Within(alongDpi / common, 1, 100, nameof(alongDpi));
        Height = Bounds.Within(acrossDpi / common, 1, 100, nameof(acrossDpi));
    }

    /// <summary>As high as wide.</summary>
    public static PixelShape Square { get; } = new(1, 1);

    /// <summary>Width of a pixel, units.</summary>
    public int Width { get; }

    /// <summary>Height of a pixel, units.</summary>
    public int Height { get; }
}
