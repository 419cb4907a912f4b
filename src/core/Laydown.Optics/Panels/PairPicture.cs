using Laydown.Measures;

namespace Laydown.Optics.Panels;

/// <summary>Two pictures on one grid of pixels.</summary>
public sealed record PairPicture
{
    /// <summary>A pair.</summary>
    /// <param name="width">Pixels across, at least 1.</param>
    /// <param name="height">Pixels down, at least 1.</param>
    /// <param name="pixels">For each pixel, row after row from the top: L*, a*, b* of the day picture, then of the night picture, each
    /// relative to its own white (D50).</param>
    /// <exception cref="ArgumentException">Another number of values.</exception>
    public PairPicture(int width, int height, float[] pixels)
    {
        (Width, Height, Pixels) = (Bounds.Within(width, 1, 100_000), Bounds.Within(height, 1, 100_000), pixels);
        if (pixels.LongLength != 6L * width * height)
            throw new ArgumentException(Invariant($"{pixels.LongLength} values for {width} × {height} pixels: wanted 6 each."), nameof(pixels));
    }

    /// <summary>Pixels across.</summary>
    public int Width { get; }

    /// <summary>Pixels down.</summary>
    public int Height { get; }

    /// <summary>Six values a pixel.</summary>
    public float[] Pixels { get; }

    /// <summary>The six values of a pixel.</summary>
    internal ReadOnlySpan<float> At(int pixel) => Pixels.AsSpan(6 * pixel, 6);

    /// <summary>Up to <paramref name="most"/> pixels, spread evenly.</summary>
    internal int[] Sample(int most)
    {
        // A step that has no common divisor with the width walks over all columns.
        long all = (long)Width * Height, step = Math.Max(1, all / most);
        while (step > 1 && Gcd(step, Width) > 1)
            step++;
        return [.. Enumerable.Range(0, (int)((all + step - 1) / step)).Select(i => (int)(i * step))];
    }

    private static long Gcd(long one, long other) => other == 0 ? one : Gcd(other, one % other);
}
