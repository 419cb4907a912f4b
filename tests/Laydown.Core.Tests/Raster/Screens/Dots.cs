using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Screens;

/// <summary>Squares of dots of one tone, 256 × 256, and what the judge says of them.</summary>
internal static class Dots
{
    public const int Side = ThresholdArray.Side;

    /// <summary>Viewing scale of all checks: S = 2000, near.</summary>
    public const double Near = 2000;

    public static readonly double[] Tones = [1 / 32.0, 1 / 16.0, 1 / 8.0, 1 / 4.0, 3 / 8.0, 1 / 2.0];

    private static readonly Lazy<ThresholdArray[]> Made = new(() => [.. Enumerable.Range(101, 10).Select(s => VoidAndCluster.Make(s, [], 0, default))]);

    /// <summary>Arrays of ten seeds, each alone.</summary>
    public static IReadOnlyList<ThresholdArray> TenArrays => Made.Value;

    public static ushort Code(double tone) => (ushort)Math.Round(tone * 65535);

    public static double[] Of(ThresholdArray array, double tone) => [.. array.Ranks.Select(r => Code(tone) > ThresholdArray.Threshold(r) ? 1.0 : 0)];

    public static double[] White(int seed, double tone)
    {
        Random chance = new(seed);
        return [.. Enumerable.Range(0, Side * Side).Select(_ => chance.NextDouble() < tone ? 1.0 : 0)];
    }

    /// <summary>The matrix of 8 × 8 whose next dot is always farthest from those before. [Bayer1973]</summary>
    public static double[] Bayer(double tone) => [.. Enumerable.Range(0, Side * Side).Select(at =>
    {
        int rank = 0;
        for (int bit = 0; bit < 3; bit++)
        {
            int y = (at / Side >> bit) & 1, x = (at >> bit) & 1;
            rank = (rank << 2) | ((x ^ y) << 1) | y;
        }

        return (rank + 0.5) / 64 < tone ? 1.0 : 0;
    })];

    /// <summary>Plain error diffusion, each row from the left; begun at another row for each seed so that squares differ.
    /// [Floyd1976]</summary>
    public static double[] FloydSteinberg(int seed, double tone)
    {
        const int width = Side + 64;
        Random chance = new(seed);
        double[] errors = [.. Enumerable.Range(0, width + 2).Select(_ => chance.NextDouble() - 0.5)];
        double[] dots = new double[Side * Side];
        for (int row = -64; row < Side; row++)
        {
            double[] below = new double[width + 2];
            double ahead = 0;
            for (int at = 1; at <= width; at++)
            {
                double value = tone + errors[at] + ahead, dot = value > 0.5 ? 1 : 0, error = value - dot;
                ahead = error * 7 / 16;
                below[at - 1] += error * 3 / 16;
                below[at] += error * 5 / 16;
                below[at + 1] += error / 16;
                if (row >= 0 && at > 32 && at <= Side + 32)
                    dots[(row * Side) + at - 33] = dot;
            }

            errors = below;
        }

        return dots;
    }

    public static DotSpectrum Spectrum(Func<int, double[]> square, double tone) =>
        DotSpectrum.Of([.. Enumerable.Range(0, 10).Select(square)], Side, tone);

    /// <summary>What an eye sees of the difference to the tone, root mean square.</summary>
    public static double Seen(double[] dots) => EyeFilter.RmsError(dots, Side, dots.Average(), Near);

    /// <summary>The same of two inks of equal strength together.</summary>
    public static double SeenPair(double[] one, double[] other) => Seen([.. one.Zip(other, (a, b) => (a + b) / 2)]);

    /// <summary>One ink of screened dots as volumes.</summary>
    public static double[] Volumes(DotRows dots, int ink, DropLevels drops) =>
        [.. Enumerable.Range(0, Side * Side).Select(at => drops.ShareOf(dots[ink, at / Side, at % Side]))];

    /// <summary>A tint of one tone for each ink, screened.</summary>
    public static DotRows Tint(ILayerScreen screen, params double[] tones) =>
        Screened.Run(screen, Screened.Flat(Side + (2 * screen.ReachPixels), Side + (2 * screen.ReachPixels), [.. tones.Select(Code)]));
}
