using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Core.Tests.Colour;
using Laydown.Optics.Looks;
using Laydown.Optics.Panels;

namespace Laydown.Core.Tests.Panels;

/// <summary>Panels for the tests: generic inks on both sides of a white.</summary>
internal static class Duplex
{
    public static LookInk[] Cmyk { get; } = [.. Enumerable.Range(0, 4).Select(i => LookInk.Colour(GenericUvInks.Density((ProcessInk)i)))];

    public static PanelLimits Limits { get; } = new([1, 1, 1, 1], 2.6, [1, 1, 1, 1], 2.6);

    /// <summary>White with both films in contact with air: the panel behind the table of 576 pairs.</summary>
    public static PanelStack SplitFaces(double scatter = 8) => new(
        LookSheet.Clear(2 * 1.5 / ((1.5 * 1.5) + 1)),
        [new(LookFace.First, [LookInk.White(scatter, 0.002)]), new(LookFace.First, Cmyk), new(LookFace.Second, Cmyk)], LookFace.First, Limits);

    /// <summary>Whites of the table: D50 at 0.75048 of the perfect diffuser, the lamp at half of 0.18355; day black lifted to L* 20.</summary>
    public static PanelAim TableAim { get; } = new(
        SpectralWeights.For(Illuminant.D50).White.Times(0.75048 * 500 / Math.PI / 100),
        SpectralWeights.For(Illuminant.LedB4).White.Times(0.5 * 0.18355 * 3000 / 100), 20, 0.5);

    /// <summary>Colour, white, colour on one face of a sheet.</summary>
    public static PanelStack OneFace(LookSheet sheet, LookFace printed, double scatter = 8)
    {
        LookLayer colour = new(printed, Cmyk), white = new(printed, [LookInk.White(scatter, 0.002)]);
        return new(sheet, [colour, white, new(printed, Cmyk)], LookFace.First, Limits);
    }

    public static PanelModel Model(PanelStack stack, double nightLux = 0) => new(stack, Scene.Day(500, 0.8), Scene.Lit(nightLux, 3000));

    /// <summary>Rows of a table of pairs: wanted colours, inks found there, differences and what is left.</summary>
    public static IReadOnlyList<(Lab Day, Lab Night, double[] Inks, double Left, double DayDifference, double NightDifference)> Pairs(string name) =>
        [.. PublishedTable.Rows("optics/" + name).Select(r => (new Lab(r[2], r[3], r[4]), new Lab(r[5], r[6], r[7]), r[8..16], r[18], r[16], r[17]))];
}
