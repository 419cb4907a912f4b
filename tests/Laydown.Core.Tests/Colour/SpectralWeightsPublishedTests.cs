using Laydown.Colour.Spectra;

namespace Laydown.Core.Tests.Colour;

/// <summary>Weighting factors against those printed in ASTM E308-15, to half their last digit.</summary>
public sealed class SpectralWeightsPublishedTests
{
    private static ColourMatching TenDegree { get; } = new(
        360, [.. PublishedTable.Rows("colour/cmf-1964-10deg-1nm.csv").Select(r => r[1..])]);

    [Fact]
    public void D65_for_2_degrees_at_20_nm_is_as_printed() =>
        Compare("colour/astm-e308-15-weights-D65-2deg-20nm.csv", SpectralWeights.For(Illuminant.D65, ColourMatching.TwoDegree, 360, 820, 20));

    [Fact]
    public void A_short_range_takes_what_lies_outside_into_its_end_bands() =>

        // The printed end bands are sums of printed factors (3 on the left, 7 on the right), each of them rounded.
        Compare(
            "colour/astm-e308-15-weights-D65-2deg-20nm-400-700-folded.csv",
            SpectralWeights.For(Illuminant.D65, ColourMatching.TwoDegree, 400, 700, 20), 3, 7);

    [Fact]
    public void A_for_10_degrees_at_10_nm_is_as_printed() =>
        Compare("colour/astm-e308-15-weights-A-10deg-10nm.csv", SpectralWeights.For(Illuminant.A, TenDegree, 360, 830, 10));

    [Fact]
    public void A_for_10_degrees_at_20_nm_is_as_printed() =>
        Compare("colour/astm-e308-15-weights-A-10deg-20nm.csv", SpectralWeights.For(Illuminant.A, TenDegree, 360, 820, 20));

    [Theory]
    [InlineData("D50", 96.42, 82.51)]
    [InlineData("D65", 95.04, 108.88)]
    [InlineData("A", 109.85, 35.58)]
    public void White_points_are_those_of_CIE_15_to_their_last_digit(string light, double x, double z)
    {
        // CIE 015:2018, table of tristimulus values of illuminants for the 2° observer, 2 decimals.
        Illuminant illuminant = new[] { Illuminant.D50, Illuminant.D65, Illuminant.A }.Single(i => i.Name == light);
        var white = SpectralWeights.For(illuminant).White;
        Assert.Equal(x, white.X, tolerance: 0.01);
        Assert.Equal(100, white.Y, tolerance: 1e-9);
        Assert.Equal(z, white.Z, tolerance: 0.01);
    }

    private static void Compare(string table, SpectralWeights weights, int roundingsLeft = 1, int roundingsRight = 1)
    {
        IReadOnlyList<double[]> printed = PublishedTable.Rows(table);
        Assert.Equal(printed.Count, weights.Count);
        for (int band = 0; band < printed.Count; band++)
        {
            Assert.Equal(printed[band][0], weights.FirstNm + (band * weights.StepNm));
            double tolerance = (0.0005 * (band == 0 ? roundingsLeft : band == printed.Count - 1 ? roundingsRight : 1)) + 1e-9;
            Assert.Equal(printed[band][1], weights.X[band], tolerance);
            Assert.Equal(printed[band][2], weights.Y[band], tolerance);
            Assert.Equal(printed[band][3], weights.Z[band], tolerance);
        }
    }
}
