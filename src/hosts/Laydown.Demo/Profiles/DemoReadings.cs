using Laydown.Colour.Charts;
using Laydown.Colour.Inks;
using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;
using Laydown.Demo.Art;
using Laydown.Optics.Layers;
using Laydown.Optics.Prints;

namespace Laydown.Demo.Profiles;

/// <summary>Readings of charts that were never printed: the project's own model of generic inks, drops that spread, and noise from a fixed seed.</summary>
internal static class DemoReadings
{
    private const double YuleNielsen = 2;
    private const double Spread = 0.82;
    private const double NoiseOfReading = 0.004;
    private const double NoiseOfPrint = 0.006;
    private static readonly string[] Names = ["Cyan", "Magenta", "Yellow", "Black", "Light Cyan", "Light Magenta"];

    /// <summary>Readings of a chart of six inks.</summary>
    /// <param name="name">Name of the set; says that it is invented.</param>
    /// <param name="kind">The chart.</param>
    /// <param name="strength">Density of each ink as a part of its usual.</param>
    /// <param name="spread">How much more the drops spread than usual: 1 as usual, under 1 darker tones.</param>
    /// <param name="seed">Seed of the noise.</param>
    internal static ReadingSet Of(string name, ChartKind kind, IReadOnlyList<double> strength, double spread, ulong seed)
    {
        Chart chart = ChartDesign.Make(kind, [.. Names.Select(n => new ChartInk(n))], 260, 1).Value;
        NeugebauerModel model = Model(strength);
        Chance chance = new(seed);
        List<Patch> patches = [];
        foreach (ChartPatch patch in chart.Patches)
        {
            double[] covered = [.. patch.Inks.Select(i => Math.Clamp(Math.Pow(i, Spread * spread) * (1 + (NoiseOfPrint * Bell(chance))), 0, 1))];
            double[] seen = [.. model.Reflectance(covered).Select(r => Math.Round(r * (1 + (NoiseOfReading * Bell(chance))), 5))];
            Spectrum spectrum = new(Bands.FirstNm, Bands.StepNm, seen);
            patches.Add(new(patch.Id, patch.Inks, ReadingColour.LabOf(spectrum), spectrum));
        }

        return new(name, Names, new("invented", "M1", "white", "2026-11-24", "computed for the demo; no instrument stands behind it"), patches);
    }

    private static NeugebauerModel Model(IReadOnlyList<double> strength)
    {
        double[] stock = [.. Enumerable.Range(0, Bands.Count).Select(band => SolidPrint.Inside(DemoPrint.All[0].Bare(band), Boundary.Ink))];
        double[][] densities = [.. Enum.GetValues<ProcessInk>().Select((ink, i) => GenericUvInks.Density(ink).Select(d => d * strength[i]).ToArray())];
        return new(SolidPrint.Overprints(stock, densities, Boundary.Ink), YuleNielsen, SpectralWeights.For(Illuminant.D50));
    }

    // The sum of twelve even numbers, centred: as good as a bell curve for this.
    internal static double Bell(Chance chance) => Enumerable.Range(0, 12).Sum(_ => chance.Next()) - 6;
}
