using Laydown.Colour.Spectra;

namespace Laydown.Core.Tests.Colour;

/// <summary>The product's own weights against those of another program (tests/data/colour/README.md), which rounds to 6 decimals.</summary>
public sealed class SpectralWeightsReferenceTests
{
    [Theory]
    [InlineData("D50")]
    [InlineData("D65")]
    [InlineData("LED-B4")]
    public void Agree_to_the_last_digit(string light)
    {
        Illuminant illuminant = new[] { Illuminant.D50, Illuminant.D65, Illuminant.LedB4 }.Single(i => i.Name == light);
        SpectralWeights weights = SpectralWeights.For(illuminant);
        IReadOnlyList<double[]> table = PublishedTable.Rows($"colour/weights-{light}-2deg-10nm-380-730.csv");
        Assert.Equal(Bands.Count, table.Count);
        for (int band = 0; band < Bands.Count; band++)
        {
            Assert.Equal(table[band][1], weights.X[band], tolerance: 6e-7);
            Assert.Equal(table[band][2], weights.Y[band], tolerance: 6e-7);
            Assert.Equal(table[band][3], weights.Z[band], tolerance: 6e-7);
        }
    }
}
