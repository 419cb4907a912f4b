using Laydown.Colour.Densities;
using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;

namespace Laydown.Core.Tests.Colour;

/// <summary>Laws of the densities.</summary>
public sealed class DensityLawTests
{
    private static readonly Spectrum Stock = new(380, 10, Bands.Flat(0.8));

    [Theory]
    [InlineData(1, 0)]
    [InlineData(0.1, 1)]
    [InlineData(0.01, 2)]
    [InlineData(0, 6)]
    public void A_neutral_has_the_density_of_its_reflectance_in_every_kind(double reflectance, double density)
    {
        Spectrum neutral = new(380, 10, Bands.Flat(reflectance));
        Assert.Equal(density, VisualDensity.Of(neutral), tolerance: 1e-9);
        Assert.Equal(density, PeakBandDensity.At(neutral, 500), tolerance: 1e-9);
        Assert.Equal(density, new DensityTable("own", 400, 10, ["one"], [[1, 2, 3]]).Of(neutral, 0), tolerance: 1e-9);
    }

    [Fact]
    public void A_table_of_the_eye_under_A_gives_the_visual_density()
    {
        // The sum at every nanometre against the weights every 5 nm: the third decimal.
        double[] eye = [.. Enumerable.Range(380, 351).Select(nm => ColourMatching.TwoDegree.At(nm)[1] * Illuminant.A.At(nm))];
        DensityTable table = new("eye", 380, 1, ["Visual"], [eye]);
        Assert.All(SpectralWeightsLawTests.Ohta(), s => Assert.Equal(VisualDensity.Of(s), table.Of(s, 0), tolerance: 0.002));
    }

    [Fact]
    public void The_peak_band_is_where_the_ink_takes_most_of_the_stock_s_light()
    {
        double[] values = Bands.Flat(0.7);
        values[25] = 0.05;
        Spectrum solid = new(380, 10, values);
        Assert.Equal(630, PeakBandDensity.PeakNm(solid, Stock));
        Assert.Equal(-Math.Log10(0.05), PeakBandDensity.At(solid, 630), tolerance: 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => PeakBandDensity.At(solid, 635));
        Assert.Throws<ArgumentException>(() => PeakBandDensity.PeakNm(solid, new(390, 10, Bands.Flat(1))));
    }

    [Fact]
    public void Tables_without_weight_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new DensityTable("x", 400, 10, ["one"], [[0, 0]]));
        Assert.Throws<ArgumentException>(() => new DensityTable("x", 400, 10, ["one"], [[1, double.NaN]]));
        Assert.Throws<ArgumentException>(() => new DensityTable("x", 400, 10, ["one", "two"], [[1, 1]]));
    }
}
