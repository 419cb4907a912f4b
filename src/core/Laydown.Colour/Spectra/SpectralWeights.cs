using System.Runtime.Intrinsics;
using Laydown.Colour.Spaces;

namespace Laydown.Colour.Spectra;

/// <summary>Weights that turn a spectrum in even bands into tristimulus values under one light [ASTM-E308] [ASTM-E2022].</summary>
/// <remarks>
/// X = Σ R·Wx. The product of light and observer at every nanometre is shared out to the four nearest bands by cubic Lagrange
/// coefficients
/// (three bands and a quadratic in the first and last step), then scaled to ΣWy = 100. Weights outside a shorter range go to its end
/// bands.
/// </remarks>
public sealed class SpectralWeights
{
    private const int TableFirstNm = 360;
    private const int TableLastNm = 830;
    private const int SumLastNm = 780;
    private readonly double[] x, y, z;

    private SpectralWeights(int firstNm, int stepNm, double[][] weights)
    {
        FirstNm = firstNm;
        StepNm = stepNm;
        (x, y, z) = (weights[0], weights[1], weights[2]);
        White = new(x.Sum(), y.Sum(), z.Sum());
    }

    /// <summary>First band, nm.</summary>
    public int FirstNm { get; }

    /// <summary>Width of a band, nm.</summary>
    public int StepNm { get; }

    /// <summary>Number of bands.</summary>
    public int Count => x.Length;

    /// <summary>Tristimulus values of the perfect diffuser; Y = 100.</summary>
    public Xyz White { get; }

    /// <summary>Weights for X.</summary>
    public ReadOnlySpan<double> X => x;

    /// <summary>Weights for Y; their sum is 100.</summary>
    public ReadOnlySpan<double> Y => y;

    /// <summary>Weights for Z.</summary>
    public ReadOnlySpan<double> Z => z;

    /// <summary>Weights for the product's own bands and the 2° observer.</summary>
    public static SpectralWeights For(Illuminant light) => For(light, ColourMatching.TwoDegree, Bands.FirstNm, Bands.LastNm, Bands.StepNm);

    /// <summary>Weights for any light, observer and bands.</summary>
    /// <remarks>Bands of 5 nm or less are summed as they are; wider ones take the light between them [ASTM-E2022]. Bands outside 360 nm to
    /// 830 nm, or 780 nm where they are summed, weigh nothing.</remarks>
    /// <param name="light">The light.</param>
    /// <param name="observer">The observer, at least 360–830 nm.</param>
    /// <param name="firstNm">First band, nm, at most 400.</param>
    /// <param name="lastNm">Last band, nm, whole steps above the first, at least 700.</param>
    /// <param name="stepNm">Width of a band, nm, 1 to 20.</param>
    /// <exception cref="ArgumentOutOfRangeException">The bands do not fit.</exception>
    public static SpectralWeights For(Illuminant light, ColourMatching observer, int firstNm, int lastNm, int stepNm)
    {
        if (stepNm is < 1 or > 20)
            throw new ArgumentOutOfRangeException(nameof(stepNm), stepNm, "Band width: wanted 1 nm to 20 nm.");
        if (firstNm is < 0 or > 400 || lastNm < 700 || (lastNm - firstNm) % stepNm != 0)
            throw new ArgumentOutOfRangeException(nameof(firstNm), firstNm, "Bands: wanted whole steps that reach from 400 nm to 700 nm.");

        // Nodes stand in step with the bands, from the first to the last within the tables.
        int below = firstNm < TableFirstNm ? (TableFirstNm - firstNm + stepNm - 1) / stepNm : 0;
        int tableLast = stepNm <= 5 ? SumLastNm : TableLastNm;
        int above = lastNm > tableLast ? (lastNm - tableLast + stepNm - 1) / stepNm : 0;
        int start = TableFirstNm + ((((firstNm - TableFirstNm) % stepNm) + stepNm) % stepNm);
        double[][] whole = stepNm <= 5 ? Sums(light, observer, start, stepNm) : Spread(light, observer, start, stepNm);
        int skip = (firstNm + (below * stepNm) - start) / stepNm, steps = ((lastNm - firstNm) / stepNm) - below - above;
        return new(firstNm, stepNm, [.. Fold(whole, skip, steps).Select(axis => (double[])[.. new double[below], .. axis, .. new double[above]])]);
    }

    /// <summary>Tristimulus values of a reflectance or transmittance; the perfect diffuser has Y = 100.</summary>
    /// <exception cref="ArgumentException">The spectrum has another number of bands.</exception>
    public Xyz Of(ReadOnlySpan<double> spectrum)
    {
        if (spectrum.Length != Count)
            throw new ArgumentException(Invariant($"Spectrum of {spectrum.Length} bands: wanted {Count}."), nameof(spectrum));

        return new(Sum(spectrum, x), Sum(spectrum, y), Sum(spectrum, z));
    }

    private static double Sum(ReadOnlySpan<double> spectrum, double[] axis)
    {
        // Four bands side by side on every machine, so that the last bit is the same everywhere.
        int band = 0;
        Vector256<double> sums = Vector256<double>.Zero;
        for (; band <= axis.Length - Vector256<double>.Count; band += Vector256<double>.Count)
            sums += Vector256.Create(spectrum[band..]) * Vector256.Create<double>(axis.AsSpan(band));
        double sum = Vector256.Sum(sums);
        for (; band < axis.Length; band++)
            sum += spectrum[band] * axis[band];
        return sum;
    }

    // Light times observer at the bands alone: the practice for 5 nm and less.
    private static double[][] Sums(Illuminant light, ColourMatching observer, int start, int stepNm)
    {
        int nodes = ((SumLastNm - start) / stepNm) + 1;
        double[][] weights = [new double[nodes], new double[nodes], new double[nodes]];
        for (int node = 0; node < nodes; node++)
        {
            int nm = start + (node * stepNm);
            for (int axis = 0; axis < 3; axis++)
                weights[axis][node] = observer.At(nm)[axis] * light.At(nm);
        }

        return Scaled(weights);
    }

    private static double[][] Spread(Illuminant light, ColourMatching observer, int start, int stepNm)
    {
        int nodes = ((TableLastNm - start) / stepNm) + 1;
        double[][] weights = [new double[nodes], new double[nodes], new double[nodes]];
        Span<double> share = stackalloc double[4];
        for (int nm = TableFirstNm; nm <= TableLastNm; nm++)
        {
            // What lies before the first or after the last node goes to it whole.
            int first = Shares(Math.Clamp(nm, start, start + ((nodes - 1) * stepNm)) - start, stepNm, nodes, share);
            ReadOnlySpan<double> eye = observer.At(nm);
            for (int axis = 0; axis < 3; axis++)
            {
                for (int i = 0; i < 4; i++)
                {
                    // A quadratic share is 0 in its fourth place, which may lie past the last band.
                    if (share[i] != 0)
                        weights[axis][first + i] += share[i] * eye[axis] * light.At(nm);
                }
            }
        }

        return Scaled(weights);
    }

    private static double[][] Scaled(double[][] weights)
    {
        double scale = 100 / weights[1].Sum();
        foreach (double[] axis in weights)
            for (int node = 0; node < axis.Length; node++)
                axis[node] *= scale;
        return weights;
    }

    // Lagrange coefficients of the bands around a wavelength; returns the first of them.
    private static int Shares(int offsetNm, int stepNm, int nodes, Span<double> share)
    {
        int left = Math.Min(offsetNm / stepNm, nodes - 2);
        double t = (offsetNm - (left * stepNm)) / (double)stepNm;
        if (left > 0 && left < nodes - 2)
        {
            share[0] = -t * (t - 1) * (t - 2) / 6;
            share[1] = (t + 1) * (t - 1) * (t - 2) / 2;
            share[2] = -(t + 1) * t * (t - 2) / 2;
            share[3] = (t + 1) * t * (t - 1) / 6;
            return left - 1;
        }

        // The first step looks right, the last step looks left: the same quadratic, mirrored.
        double u = left == 0 ? t : 1 - t;
        double near = (u - 1) * (u - 2) / 2, middle = -u * (u - 2), far = u * (u - 1) / 2;
        (share[0], share[1], share[2], share[3]) = left == 0 ? (near, middle, far, 0) : (far, middle, near, 0);
        return left == 0 ? 0 : nodes - 3;
    }

    private static double[][] Fold(double[][] whole, int skip, int steps) => [.. whole.Select(axis =>
    {
        double[] part = axis[skip..(skip + steps + 1)];
        part[0] += axis[..skip].Sum();
        part[^1] += axis[(skip + steps + 1)..].Sum();
        return part;
    })];
}
