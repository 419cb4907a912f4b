using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Press.Inks;

namespace Laydown.Edges.Tests.Layers;

/// <summary>A small ink set and optics for two of its inks.</summary>
internal static class SampleOptics
{
    public static InkSet Inks(double white = 0.9) => new("few", "Few inks", true,
    [
        new(InkRole.Cyan, "Cyan", 1.1, Money.FromUnits(90.0), 1, 1, 200),
        new(InkRole.Magenta, "Magenta", 1.1, Money.FromUnits(90.0), 1, 1, 200),
        new(InkRole.LightCyan, "Light Cyan", 1.1, Money.FromUnits(90.0), 0.3, 0.25, 200),
        new(InkRole.White, "White", 1.3, Money.FromUnits(110.0), white, 1, 260),
    ]);

    public static InkOptics Optics() => new("few-read", "Few inks as read", true, "few", [Cyan(), White()]);

    public static InkLight Cyan() => new(
        InkRole.Cyan, [.. Enumerable.Range(0, Bands.Count).Select(i => 0.1 + (0.05 * i))], Bands.Flat(0), OpticsOrigin.Through, OpticsOrigin.Through, [0, 100]);

    public static InkLight White() => new(
        InkRole.White, Bands.Flat(0.02), [.. Enumerable.Range(0, Bands.Count).Select(i => 8 - (0.05 * i))],
        OpticsOrigin.OverBothAndThrough, OpticsOrigin.OverBothAndThrough, [0, 60, 100]);
}
