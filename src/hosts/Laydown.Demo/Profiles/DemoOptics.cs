using Laydown.Colour.Charts;
using Laydown.Colour.Inks;
using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;
using Laydown.Demo.Art;
using Laydown.Demo.Descriptions;
using Laydown.Intake.Colour;
using Laydown.Measures;
using Laydown.Optics.Fits;
using Laydown.Optics.Looks;
using Laydown.Press.Inks;
using Laydown.Shop;
using Laydown.Shop.Colour;

namespace Laydown.Demo.Profiles;

/// <summary>Optics of the demo's eight inks: a chart that was never printed, read by the project's own model with noise, fitted by the product.</summary>
/// <remarks>Invented: a white whose scatter falls slowly with the wavelength and which absorbs under 410 nm, as titanium dioxide does.</remarks>
internal static class DemoOptics
{
    /// <summary>The print condition the chart was printed by; the optics hold for its ink set.</summary>
    internal const string ConditionId = "long-belt-clear-sheets";

    private const string ReadingsFile = "eight-inks-optics-invented.txt";
    private const double NoiseOfReading = 0.003, NoiseFloor = 0.0005, NoiseOfPrint = 0.012;
    private const double WhiteCurve = 1.12, ColourCurve = 0.84;
    private static readonly Backings Read = new(Bands.Flat(0.035), [.. Enumerable.Range(0, Bands.Count).Select(b => 0.9 - (0.12 * Math.Exp(-b / 3.0)))]);

    /// <summary>Writes readings and optics below a shop's folder, and names them in the ink set; the same bytes every time.</summary>
    /// <exception cref="OperationCanceledException">Cancelled; files that stand are whole.</exception>
    internal static void Write(string shopFolder, CancellationToken cancellation)
    {
        ShopFolder folder = new(shopFolder);
        ColourFiles files = new();
        string path = Path.Combine(folder.Readings, ReadingsFile);
        byte[] readings = files.ReadingsText(Readings(31));
        DemoFiles.Write(path, stream => stream.Write(readings));
        Reading<InkOpticsOutcome> fit = new FitInkOptics(folder, files, DemoStocks.All(), new DemoClock(0))
            .FitAsync(ConditionId, new([new(path, Behind.Unsaid)], ApertureMm: 6, PatchMm: 18), cancellation).GetAwaiter().GetResult();
        if (!fit.IsTaken)
            throw new InvalidOperationException(string.Join("\n", fit.Faults));
    }

    /// <summary>The readings: every patch over black, over white and through, then the backings alone.</summary>
    internal static ReadingSet Readings(ulong seed)
    {
        FittedOptics truth = Truth();
        Chart chart = OpticsChart.Make([.. truth.Inks.Select(i => i.Ink).Where(n => n != OpticsChart.White)], OpticsChart.MostSteps).Value;
        Chance chance = new(seed);
        List<Patch> patches = [];
        foreach (ChartPatch patch in chart.Patches)
        {
            // What the press lays down unevenly is the same for every reading of a patch.
            double laid = 1 + (NoiseOfPrint * DemoReadings.Bell(chance));
            OpticsBuild build = BuildOf(chart, patch, laid);
            foreach (Behind behind in (Behind[])[Behind.Black, Behind.White, Behind.Lamp])
                patches.Add(Seen(patch.Id, patch.Inks, behind, InkOpticsFit.Predict(truth, Read, build, behind), chance));
        }

        double[] none = new double[chart.InkNames.Count];
        patches.Add(Seen("BACKING black", none, Behind.Black, Read.Black, chance));
        patches.Add(Seen("BACKING white", none, Behind.White, Read.White, chance));
        return new("eight inks on clear sheet, invented", chart.InkNames,
            new("invented", "M1", "", "2026-11-24", "computed for the demo; no instrument stands behind it"), patches);
    }

    // The inks as they are taken to be; the fit does not see this.
    internal static FittedOptics Truth()
    {
        InkSet set = DemoInks.Eight();
        double[] zero = Bands.Flat(0);
        double[] scatter = [.. Enumerable.Range(0, Bands.Count).Select(b => 6.2 * Math.Pow(Bands.Nm(b) / 550.0, -0.55))];
        double[] absorption = [.. Enumerable.Range(0, Bands.Count).Select(b => 0.011 + (2.6 / (1 + Math.Exp((Bands.Nm(b) - 392) / 6.0))))];
        double[] steps = [.. Enumerable.Range(0, 51).Select(i => i / 40.0)];
        List<FittedInk> inks = [new(OpticsChart.White, absorption, scatter, zero, zero, steps, [.. steps.Select(s => Math.Pow(s, WhiteCurve))], 0, 0, 0)];
        foreach (ProcessInk ink in Enum.GetValues<ProcessInk>())
        {
            InkRole role = Enum.Parse<InkRole>(ink.ToString());
            double[] k = [.. GenericUvInks.Density(ink, set.Find(role)!.SolidDensity).Select(d => d * Math.Log(10))];
            inks.Add(new(InkRoleNames.Of(role), k, zero, zero, zero, steps, [.. steps.Select(s => Math.Pow(s, ColourCurve))], 0, 0, 0));
        }

        return new(LookSheet.Clear(0.885), inks, [], []);
    }

    private static OpticsBuild BuildOf(Chart chart, ChartPatch patch, double laid)
    {
        List<InkShare> under = [], over = [];
        double white = 0;
        foreach ((int i, string name) in chart.InkNames.Index().Where(n => patch.Inks[n.Index] > 0))
        {
            // A white that is laid down thicker is thicker; a solid of a colour covers all there is.
            double share = name != OpticsChart.White && patch.Inks[i] >= 1 ? 1 : Math.Max(0, patch.Inks[i] * laid);
            if (name == OpticsChart.White)
                white = share;
            else if (name.EndsWith(OpticsChart.Under, StringComparison.Ordinal))
                under.Add(new(name[..^OpticsChart.Under.Length], share));
            else
                over.Add(new(name, share));
        }

        return new(under, white, over);
    }

    private static Patch Seen(string id, IReadOnlyList<double> inks, Behind behind, IReadOnlyList<double> values, Chance chance)
    {
        double[] seen = [.. values.Select(v => Math.Round(Math.Max(0, (v * (1 + (NoiseOfReading * DemoReadings.Bell(chance)))) + (NoiseFloor * DemoReadings.Bell(chance))), 5))];
        Spectrum spectrum = new(Bands.FirstNm, Bands.StepNm, seen);
        return new(id, inks, ReadingColour.LabOf(spectrum), spectrum) { Behind = behind };
    }
}
