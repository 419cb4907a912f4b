using System.Numerics;

namespace Laydown.Raster.Screens;

/// <summary>Radially averaged power spectrum and anisotropy of the dots of one tone. [Ulichney1988]</summary>
/// <remarks>Pictures are squares of independent dots: parts of one repeated array would all be equal and seem directed.</remarks>
internal sealed class DotSpectrum
{
    // Rings of fewer samples have no sound variance: half of the samples mirror the others, so 64 scatter it by a quarter, 1 dB. Own
    // choice.
    private const int FewestSamples = 64;

    private DotSpectrum(double tone, IReadOnlyList<SpectrumRing> rings) => (Tone, Rings) = (tone, rings);

    /// <summary>Share of dots, over 0 to under 1.</summary>
    public double Tone { get; }

    /// <summary>Rings one frequency sample wide, from the lowest frequency that is not 0.</summary>
    public IReadOnlyList<SpectrumRing> Rings { get; }

    /// <summary>Frequency of evenly spread dots: √tone up to one half, then √(1 − tone), cycles for each px. [Ulichney1988]</summary>
    public double Principal => Math.Sqrt(Math.Min(Tone, 1 - Tone));

    /// <summary>The ring with the most power.</summary>
    public SpectrumRing Peak => Judged.MaxBy(r => r.Power)!;

    /// <summary>Mean power below half the principal frequency: graininess.</summary>
    public double LowPower => Rings.Where(r => r.Frequency < Principal / 2).Average(r => r.Power);

    /// <summary>Median anisotropy from half the principal frequency to ½, dB.</summary>
    public double MedianAnisotropyDb
    {
        get
        {
            double[] values = [.. Judged.Where(r => r.Frequency > Principal / 2 && r.Frequency <= 0.5).Select(r => r.AnisotropyDb).Order()];
            return (values[values.Length / 2] + values[(values.Length - 1) / 2]) / 2;
        }
    }

    /// <summary>Largest anisotropy of any ring that counts, dB.</summary>
    public double WorstAnisotropyDb => Judged.Max(r => r.AnisotropyDb);

    private IEnumerable<SpectrumRing> Judged => Rings.Where(r => r.Samples >= FewestSamples);

    /// <summary>The spectrum of several pictures of one tone.</summary>
    /// <param name="pictures">Squares, row after row, 0 to 1.</param>
    /// <param name="side">Their side, px, a power of two.</param>
    /// <param name="tone">Mean of the dots.</param>
    public static DotSpectrum Of(IReadOnlyList<double[]> pictures, int side, double tone)
    {
        double[] power = new double[side * side];
        foreach (double[] picture in pictures)
            AddPower(picture, side, 1 / (pictures.Count * tone * (1 - tone) * side * side), power);
        return new(tone, RingsOf(power, side));
    }

    private static void AddPower(double[] picture, int side, double factor, double[] power)
    {
        double mean = picture.Average();
        Complex[] values = [.. picture.Select(v => new Complex(v - mean, 0))];
        Fourier.Transform(values, side);
        for (int at = 0; at < power.Length; at++)
            power[at] += factor * ((values[at].Real * values[at].Real) + (values[at].Imaginary * values[at].Imaginary));
    }

    private static List<SpectrumRing> RingsOf(double[] power, int side)
    {
        ILookup<int, double> byRadius = Enumerable.Range(0, power.Length).ToLookup(at => Radius(at, side), at => power[at]);
        List<SpectrumRing> rings = [];
        for (int radius = 1; byRadius.Contains(radius); radius++)
        {
            double[] samples = [.. byRadius[radius]];
            double mean = samples.Average(), variance = samples.Sum(p => (p - mean) * (p - mean)) / (samples.Length - 1);
            double unequal = Math.Max(variance, 1e-30) / Math.Max(mean * mean, 1e-30);
            rings.Add(new((double)radius / side, samples.Length, mean, 10 * Math.Log10(unequal)));
        }

        return rings;
    }

    private static int Radius(int at, int side)
    {
        int y = at / side, x = at % side;
        y = Math.Min(y, side - y);
        x = Math.Min(x, side - x);
        return (int)Math.Round(Math.Sqrt((x * x) + (y * y)));
    }
}
