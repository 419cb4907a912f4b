using Laydown.Colour.Fits;
using Laydown.Colour.Inks;
using Laydown.Colour.Inversion;
using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;

namespace Laydown.Core.Tests.Colour.Fits;

/// <summary>An invented print with light inks: Neugebauer's mixture of the generic inks with dot gain, read without or with noise.</summary>
internal static class SixInks
{
    public static readonly string[] Names = ["Cyan", "Magenta", "Yellow", "Black", "Light Cyan", "Light Magenta"];
    private static readonly Lazy<NeugebauerModel> Truth = new(() => new(Overprints(), 2, SpectralWeights.For(Illuminant.D50)));
    private static readonly Lazy<FittedPrint> Kept = new(() =>
        PrintFit.Fit("six.txt", Readings(0.1, 500), new(FitKind.Regression, 3, 1, false), null, CancellationToken.None).Value);

    /// <summary>Fitted once for all tests.</summary>
    public static FittedPrint Fitted => Kept.Value;

    public static GridModel Model => new(Fitted.Grid);

    public static InkLimits Limits { get; } = new([1, 1, 1, 1, 0.9, 0.9], 2.6);

    public static Lab Look(double[] inks) =>
        Lab.From(Truth.Value.ToXyz([.. inks.Select(c => Math.Pow(c, 0.8))]), WhitePoints.Pcs);

    public static ReadingSet Readings(double noise, int count)
    {
        List<Patch> patches = [];
        void Add(double[] inks)
        {
            Lab look = Look(inks);
            double[] part = Mix(patches.Count + 1, 3);
            patches.Add(new(
                Invariant($"{patches.Count + 1}"), inks,
                new(look.L + (noise * (part[0] - 0.5)), look.A + (noise * (part[1] - 0.5)), look.B + (noise * (part[2] - 0.5))), null));
        }

        Add(new double[6]);
        for (int ink = 0; ink < 6; ink++)
        {
            foreach (double level in new[] { 0.1, 0.25, 0.4, 0.55, 0.7, 0.85, 1 })
                Add([.. Enumerable.Range(0, 6).Select(i => i == ink ? level : 0)]);
        }

        for (int i = 1; patches.Count < count; i++)
        {
            double[] mixture = [.. Mix(i, 6).Select(v => v < 0.35 ? 0 : (v - 0.35) / 0.65)];
            if (mixture.Sum() <= 2.6)
                Add(mixture);
        }

        return new("six inks, invented", Names, MeasuredHow.Unsaid, patches);
    }

    /// <summary>Numbers from 0 to 1 spread evenly, the same for the same index.</summary>
    public static double[] Mix(int index, int count) => [.. Enumerable.Range(0, count).Select(k =>
    {
        double value = index * Math.Sqrt(new[] { 2, 3, 5, 7, 11, 13, 17, 19 }[k]);
        return value - Math.Floor(value);
    })];

    private static double[][] Overprints()
    {
        double[][] density = [.. Enumerable.Range(0, 6).Select(i => GenericUvInks.Density((ProcessInk)i))];
        return [.. Enumerable.Range(0, 64).Select(j => Enumerable.Range(0, Bands.Count).Select(band =>
        {
            double sum = Enumerable.Range(0, 6).Where(i => ((j >> i) & 1) != 0).Sum(i => density[i][band]);
            return (0.86 * Math.Pow(10, -2 * Math.Min(sum, 1.6))) + 0.004;
        }).ToArray())];
    }
}
