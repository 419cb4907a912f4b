using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;
using Laydown.Optics.Fits;
using Laydown.Optics.Looks;

namespace Laydown.Core.Tests.Optics.Fits;

/// <summary>A chart that was never printed: known inks, read by the model of looks with noise of press and instrument from a fixed seed.</summary>
internal sealed class ChartTruth
{
    public double[] WhiteK { get; init; } = [.. Enumerable.Range(0, Bands.Count).Select(b => 0.012 + (b < 4 ? 1.2 * Math.Exp(-b) : 0))];

    public double[] WhiteS { get; init; } = [.. Enumerable.Range(0, Bands.Count).Select(b => 8 * Math.Pow(Bands.Nm(b) / 550.0, -0.6))];

    public Dictionary<string, double[]> Colours { get; init; } = [];

    /// <summary>S·X of colours that scatter; the others are clear.</summary>
    public Dictionary<string, double[]> Turbid { get; init; } = [];

    public double[] SheetT { get; init; } = Bands.Flat(0.92);

    public double[] Black { get; init; } = Bands.Flat(0.03);

    public double[] White { get; init; } = Bands.Flat(0.88);

    /// <summary>What acts of a step of white.</summary>
    public Func<double, double> Curve { get; init; } = s => Math.Pow(s, 1.15);

    /// <summary>Noise of the instrument, share of the value, beside a tenth of it as a floor.</summary>
    public double Noise { get; init; }

    /// <summary>Unevenness of the press, share of a laydown.</summary>
    public double Uneven { get; init; }

    public int Steps { get; init; } = 11;

    public int Seed { get; init; } = 1;

    public OpticsTable Table(params Behind[] ways)
    {
        Random chance = new(Seed);
        List<OpticsReading> readings = [];
        int number = 0;
        foreach (OpticsBuild build in Builds())
        {
            double laid = Math.Max(0, 1 + (Uneven * Bell(chance)));
            string id = Invariant($"P{++number:000}");
            foreach (Behind way in ways)
                readings.Add(new(id, way, build, Read(build, way, laid, chance)));
        }

        return new(readings, new(Black, White), []);
    }

    private IEnumerable<OpticsBuild> Builds()
    {
        for (int i = 0; i < 3; i++)
            yield return OpticsBuild.Bare;
        for (int step = 1; step <= Steps; step++)
        {
            for (int repeat = 0; repeat < (step == Steps ? 4 : 2); repeat++)
                yield return new([], step / (double)Steps, []);
        }

        foreach (string ink in Colours.Keys)
        {
            foreach (double share in (double[])[0.25, 0.5, 0.75, 1])
            {
                yield return new([], 0, [new(ink, share)]);
                yield return new([], 1, [new(ink, share)]);
            }

            yield return new([new(ink, 1)], 1, []);
        }
    }

    private double[] Read(OpticsBuild build, Behind way, double laid, Random chance)
    {
        List<LookLayer> layers = [];
        List<double> coverages = [];
        void Colour(IReadOnlyList<InkShare> inks)
        {
            if (inks.Count == 0)
                return;
            layers.Add(new(LookFace.First, [.. inks.Select(i => LookInk.TurbidColour(
                [.. Colours[i.Ink].Select(k => k / Math.Log(10))], Turbid.GetValueOrDefault(i.Ink, Bands.Flat(0))))]));
            coverages.AddRange(inks.Select(i => Math.Pow(i.Share, 0.8)));
        }

        Colour(build.Under);
        if (build.White > 0)
        {
            layers.Add(new(LookFace.First, [LookInk.White(WhiteS, WhiteK)]));
            coverages.Add(Curve(build.White) * laid);
        }

        Colour(build.Over);
        double[] values = new double[Bands.Count], r = new double[Bands.Count], t = new double[Bands.Count];
        for (int band = 0; band < Bands.Count; band++)
        {
            double backing = way == Behind.Lamp ? 0 : way == Behind.White ? White[band] : Black[band];
            new StackOptics(LookSheet.Clear(SheetT), layers, backing).Solve([.. coverages], r, t);
            double seen = way == Behind.Lamp ? t[band] : r[band];
            values[band] = seen + (Noise * Bell(chance) * Math.Sqrt((seen * seen) + 0.01));
        }

        return values;
    }

    private static double Bell(Random chance) => Enumerable.Range(0, 12).Sum(_ => chance.NextDouble()) - 6;
}
