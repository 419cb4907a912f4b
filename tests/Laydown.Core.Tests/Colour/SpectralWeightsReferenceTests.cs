using Laydown.Colour.Spectra;

namespace Laydown.Core.Tests.Colour;

/// <summary>The product's own weights against those of another program (tests/data/colour/README.md), which rounds to 6 decimals.</summary>
public sealed class SpectralWeightsReferenceTests
{
    [Theory]
    [InlineData("D50", 380)]
    [InlineData("D65", 380)]
    [InlineData("LED-B4", 380)]
    [InlineData("LED-B1", 380)]
    [InlineData("LED-V2", 380)]
    [InlineData("FL11", 380)]
    [InlineData("A", 400)]
    [InlineData("D50", 400)]
    [InlineData("LED-B4", 400)]
    public void Agree_to_the_last_digit(string light, int first)
    {
        int last = first == 380 ? 730 : 700;
        SpectralWeights weights = SpectralWeights.For(CieIlluminants.Named(light)!, ColourMatching.TwoDegree, first, last, 10);
        IReadOnlyList<double[]> table = PublishedTable.Rows(Invariant($"colour/weights-{light}-2deg-10nm-{first}-{last}.csv"));
        Assert.Equal(weights.Count, table.Count);
        for (int band = 0; band < weights.Count; band++)
        {
            Assert.Equal(table[band][1], weights.X[band], tolerance: 6e-7);
            Assert.Equal(table[band][2], weights.Y[band], tolerance: 6e-7);
            Assert.Equal(table[band][3], weights.Z[band], tolerance: 6e-7);
        }
    }
}
