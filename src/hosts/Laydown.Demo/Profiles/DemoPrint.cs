using Laydown.Colour.Inks;
using Laydown.Colour.Inversion;
using Laydown.Colour.Spectra;
using Laydown.Optics.Layers;
using Laydown.Optics.Prints;

namespace Laydown.Demo.Profiles;

/// <summary>An invented print for which the demo has a profile: ink strengths, stock and limits.</summary>
/// <param name="FileName">Name of the profile's file.</param>
/// <param name="Description">Description written into the profile; says that the print is invented.</param>
/// <param name="InkStrength">Density of the inks as a part of the generic class's.</param>
/// <param name="StockReflectance">Reflectance of the bare stock at 45:0 where it is highest, 0 to 1.</param>
/// <param name="StockTint">How much less the stock reflects at 380 nm than at 730 nm, 0 to 1.</param>
/// <param name="TotalLimitPercent">Largest sum of colour inks, percent of one full ink.</param>
/// <param name="InkLimitPercent">Most of each ink: cyan, magenta, yellow, black, percent.</param>
public sealed record DemoPrint(
    string FileName,
    string Description,
    double InkStrength,
    double StockReflectance,
    double StockTint,
    double TotalLimitPercent,
    IReadOnlyList<double> InkLimitPercent)
{
    /// <summary>Light spreads wholly under the dots: the usual value for a diffusing stock (common practice, no source).</summary>
    private const double YuleNielsen = 2;

    /// <summary>The three prints of the demo.</summary>
    public static IReadOnlyList<DemoPrint> All { get; } =
    [
        new("hybrid-boards.icc", "Laydown demo: hybrid press, white boards (invented)", 1.00, 0.87, 0.10, 260, [100, 100, 100, 100]),
        new("hybrid-rolls.icc", "Laydown demo: hybrid press, white rolls (invented)", 0.96, 0.84, 0.07, 240, [100, 100, 100, 95]),
        new("plain-boards.icc", "Laydown demo: plain press, white boards (invented)", 0.90, 0.86, 0.12, 250, [100, 100, 95, 100]),
    ];

    /// <summary>The limits as parts of one full ink.</summary>
    public InkLimits Limits => new([.. InkLimitPercent.Select(p => p / 100)], TotalLimitPercent / 100);

    /// <summary>The print as a model under D50.</summary>
    public NeugebauerModel Model()
    {
        double[] stock = [.. Enumerable.Range(0, Bands.Count).Select(band => SolidPrint.Inside(Bare(band), Boundary.Ink))];
        double[][] densities = [.. new[] { ProcessInk.Cyan, ProcessInk.Magenta, ProcessInk.Yellow, ProcessInk.Black }
            .Select(ink => GenericUvInks.Density(ink).Select(d => d * InkStrength).ToArray())];
        return new(SolidPrint.Overprints(stock, densities, Boundary.Ink), YuleNielsen, SpectralWeights.For(Illuminant.D50));
    }

    // White plastics fall off toward the violet; the shape is invented: half the fall is over by 410 nm.
    internal double Bare(int band) => StockReflectance * (1 - (StockTint * Math.Exp(-(Bands.Nm(band) - Bands.FirstNm) / 43.0)));
}
