using System.Runtime.InteropServices;
using Laydown.Measures;

namespace Laydown.Raster.Scaling;

/// <summary>How one side of a picture is brought to another number of pixels: for each new pixel its neighbours and their weights.</summary>
/// <remarks>
/// Pixels are areas: the middle of new pixel t lies at (t + ½) · source / target − ½. Weights are whole numbers, <see cref="One"/> together exactly, so flat
/// stays flat. They depend on the two numbers and the kernel alone, never on a cut of tiles.
/// </remarks>
public sealed class AxisScale
{
    /// <summary>The sum of the weights of each new pixel.</summary>
    internal const int One = 1 << 14;

    private readonly int[] first;
    private readonly short[] weights;

    /// <summary>The way from one number of pixels to another.</summary>
    /// <param name="sourcePixels">Pixels there are, at least 1.</param>
    /// <param name="targetPixels">Pixels wanted, at least 1.</param>
    /// <param name="kernel">What they are weighed from.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range, or the reduction is more than a thousandfold.</exception>
    public AxisScale(int sourcePixels, int targetPixels, ScaleKernel kernel)
    {
        SourcePixels = Bounds.Within(sourcePixels, 1, 100_000_000);
        TargetPixels = Bounds.Within(targetPixels, 1, 100_000_000);
        double perPixel = sourcePixels / (double)targetPixels, width = Math.Max(1, perPixel);
        Bounds.Within(perPixel, 0, 1000, "reduction");
        double reach = KernelShape.Reach(kernel) * width;

        // An even number of neighbours, so that they can be taken in pairs.
        Taps = ((int)Math.Ceiling(2 * reach) + 1) & ~1;
        if (sourcePixels == targetPixels)
            Taps = 2;
        first = new int[targetPixels];
        weights = new short[(long)targetPixels * Taps];
        double[] found = new double[Taps];
        for (int target = 0; target < targetPixels; target++)
        {
            double middle = ((target + 0.5) * perPixel) - 0.5;
            first[target] = sourcePixels == targetPixels ? target : (int)Math.Floor(middle - (Taps / 2.0)) + 1;
            for (int tap = 0; tap < Taps; tap++)
                found[tap] = KernelShape.At(kernel, (first[target] + tap - middle) / width);
            Whole(found, weights.AsSpan(target * Taps, Taps));
        }
    }

    /// <summary>Pixels there are.</summary>
    public int SourcePixels { get; }

    /// <summary>Pixels wanted.</summary>
    public int TargetPixels { get; }

    /// <summary>Neighbours weighed for each new pixel, even; some may weigh nothing.</summary>
    internal int Taps { get; }

    /// <summary>Which pixels there are needed for some new ones. May reach below 0 and past the end: the edge pixel stands for those.</summary>
    /// <param name="firstTarget">First new pixel.</param>
    /// <param name="count">How many, at least 1.</param>
    public (int First, int Count) SourceRange(int firstTarget, int count)
    {
        int from = first[firstTarget], to = first[firstTarget + Bounds.Within(count, 1, TargetPixels) - 1] + Taps;
        return (from, to - from);
    }

    /// <summary>First neighbour of a new pixel.</summary>
    internal int FirstOf(int target) => first[target];

    /// <summary>First neighbours of some new pixels.</summary>
    internal ReadOnlySpan<int> FirstsOf(int target, int count) => first.AsSpan(target, count);

    /// <summary>Weights of some new pixels' neighbours, two in each value: the first in its lower half.</summary>
    internal ReadOnlySpan<int> PairsOf(int target, int count) => MemoryMarshal.Cast<short, int>(weights.AsSpan(target * Taps, count * Taps));

    /// <summary>Weights of a new pixel's neighbours.</summary>
    internal ReadOnlySpan<short> WeightsOf(int target) => weights.AsSpan(target * Taps, Taps);

    // To whole numbers with the right sum: what rounding leaves goes to the heaviest.
    private static void Whole(double[] found, Span<short> whole)
    {
        double sum = found.Sum();
        int left = One, heaviest = 0;
        for (int tap = 0; tap < whole.Length; tap++)
        {
            whole[tap] = (short)Math.Round(found[tap] / sum * One);
            left -= whole[tap];
            heaviest = found[tap] > found[heaviest] ? tap : heaviest;
        }

        whole[heaviest] += (short)left;
    }
}
