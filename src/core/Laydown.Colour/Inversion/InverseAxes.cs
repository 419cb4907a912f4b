using Laydown.Colour.Gamuts;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Inversion;

/// <summary>Where the nodes of colour → ink tables lie: close where the print has colours, wide outside.</summary>
/// <param name="L">L* of the nodes, rising from 0 to 100.</param>
/// <param name="A">a* of the nodes, rising from −128 to 127.996 (65535/256 − 128), with a node at 0.</param>
/// <param name="B">b* of the nodes, likewise.</param>
/// <remarks>All three have the same odd number of nodes.</remarks>
public sealed record InverseAxes(IReadOnlyList<double> L, IReadOnlyList<double> A, IReadOnlyList<double> B)
{
    private const double Least = -128;
    private const double Most = (65535.0 / 256) - 128;
    private const int Outside = 2;
    private const double DarkShare = 0.58;
    private const double Margin = 4;

    /// <summary>Axes fitted to a gamut: two cells on each side for what lies outside, all others inside.</summary>
    /// <param name="gamut">The gamut, media-relative.</param>
    /// <param name="steps">Nodes along each axis: odd, 9 to 65.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of nodes is even or outside its range.</exception>
    public static InverseAxes For(Gamut gamut, int steps)
    {
        if (Bounds.Within(steps, 9, 65) % 2 == 0)
            throw new ArgumentOutOfRangeException(nameof(steps), steps, "Nodes of a table: wanted an odd number, so that neutral lies on nodes.");
        // Black takes the place of colour in the darks, so nodes stand closer there.
        int darks = (int)Math.Round(DarkShare * (steps - 1));
        double[] lightness = [.. Enumerable.Range(0, steps).Select(
            i => i <= darks ? 50.0 * i / darks : 50 + (50.0 * (i - darks) / (steps - 1 - darks)))];
        return new(
            lightness, Axis(gamut.Extent.LeastA - Margin, gamut.Extent.MostA + Margin, steps),
            Axis(gamut.Extent.LeastB - Margin, gamut.Extent.MostB + Margin, steps));
    }

    /// <summary>Axes with even steps over all of Lab that a profile can name.</summary>
    /// <param name="steps">Nodes along each axis: odd, 3 to 65.</param>
    public static InverseAxes Even(int steps)
    {
        if (Bounds.Within(steps, 3, 65) % 2 == 0)
            throw new ArgumentOutOfRangeException(nameof(steps), steps, "Nodes of a table: wanted an odd number, so that neutral lies on nodes.");
        int middle = (steps - 1) / 2;
        double[] wide = [.. Enumerable.Range(0, steps).Select(i => i < middle ? Least * (middle - i) / middle : Most * (i - middle) / middle)];
        return new([.. Enumerable.Range(0, steps).Select(i => 100.0 * i / (steps - 1))], wide, wide);
    }

    /// <summary>Colour of a node.</summary>
    public Lab Node(int l, int a, int b) => new(L[l], A[a], B[b]);

    /// <summary>Place of a* = 0 among the nodes.</summary>
    internal int NeutralA => A.ToList().IndexOf(0);

    /// <summary>Place of b* = 0 among the nodes.</summary>
    internal int NeutralB => B.ToList().IndexOf(0);

    private static double[] Axis(double least, double most, int steps)
    {
        double low = Math.Max(least, Least + 1), high = Math.Min(most, Most - 1);
        int inner = steps - 1 - (2 * Outside), below = Math.Clamp((int)Math.Round(inner * low / (low - high)), 1, inner - 1), zero = Outside + below;
        return [.. Enumerable.Range(0, steps).Select(i =>
        {
            (int off, int side, double reach, double end) = i < zero ? (zero - i, below, low, Least) : (i - zero, inner - below, high, Most);
            return off <= side ? reach * off / side : reach + ((end - reach) * (off - side) / Outside);
        })];
    }
}
