using Laydown.Colour.Inks;
using Laydown.Colour.Spectra;
using Laydown.Optics.Layers;
using Laydown.Optics.Prints;

namespace Laydown.Core.Tests.Colour;

/// <summary>A print for the tests: the generic inks on a flat white stock.</summary>
internal static class Prints
{
    public static double[][] Overprints { get; } = SolidPrint.Overprints(
        Bands.Flat(SolidPrint.Inside(0.86, Boundary.Ink)),
        [.. Enumerable.Range(0, 4).Select(i => GenericUvInks.Density((ProcessInk)i))], Boundary.Ink);

    public static NeugebauerModel Model(double yuleNielsen = 2) => new(Overprints, yuleNielsen, SpectralWeights.For(Illuminant.D50));

    /// <summary>Evenly scattered numbers from 0 to 1, the same each time: multiples of the golden ratio and its kin.</summary>
    public static double[] Scatter(int index) =>
        [Part(index * 0.8566748838545029), Part(index * 0.7338918566271260), Part(index * 0.6287067210378087), Part(index * 0.5385972572236101)];

    private static double Part(double value) => value - Math.Floor(value);
}
