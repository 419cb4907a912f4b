using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;

namespace Laydown.Core.Tests.Colour;

/// <summary>Laws of the weights for any bands.</summary>
public sealed class SpectralWeightsLawTests
{
    [Theory]
    [InlineData(380, 730, 10)]
    [InlineData(400, 700, 10)]
    [InlineData(400, 700, 20)]
    [InlineData(390, 730, 20)]
    [InlineData(395, 705, 10)]
    [InlineData(340, 900, 10)]
    [InlineData(380, 780, 5)]
    [InlineData(380, 730, 1)]
    [InlineData(300, 1100, 4)]
    public void The_perfect_diffuser_has_Y_100_and_the_same_white_in_all_bands(int first, int last, int step)
    {
        SpectralWeights weights = SpectralWeights.For(Illuminant.D50, ColourMatching.TwoDegree, first, last, step);
        Assert.Equal(((last - first) / step) + 1, weights.Count);
        Assert.Equal(100, weights.White.Y, tolerance: 1e-9);

        // Sums every 1 nm, 4 nm and 5 nm of a light that is linear between values every 5 nm differ in the second decimal.
        Assert.Equal(96.424, weights.White.X, tolerance: 0.04);
        Assert.Equal(82.513, weights.White.Z, tolerance: 0.04);
    }

    [Theory]
    [InlineData(380, 780, 10, 0.08)]
    [InlineData(380, 730, 10, 0.08)]
    [InlineData(385, 775, 10, 0.08)]
    [InlineData(400, 700, 10, 0.12)]
    [InlineData(380, 780, 20, 0.25)]
    public void Real_spectra_have_the_same_colour_in_coarser_bands(int first, int last, int step, double most)
    {
        // 24 measured patches every 5 nm; the tolerances are what was found, rounded up.
        foreach (Spectrum fine in Ohta())
        {
            Spectrum coarse = new(first, step, [.. Enumerable.Range(0, ((last - first) / step) + 1).Select(b => fine.Values[(first + (b * step) - 380) / 5])]);
            Assert.InRange(Ciede2000.Between(ReadingColour.LabOf(fine), ReadingColour.LabOf(coarse)), 0, most);
        }
    }

    [Fact]
    public void The_grey_patches_of_the_chart_have_the_lightness_in_their_names()
    {
        // White 9.5, neutral 8, 6.5, 5, 3.5, black 2: Munsell value times ten is L* within 2.5 (rule of thumb, common practice).
        double[] value = [9.5, 8, 6.5, 5, 3.5, 2];
        Assert.All(Ohta()[^6..].Zip(value), p => Assert.Equal(10 * p.Second, ReadingColour.LabOf(p.First).L, tolerance: 2.5));
        Assert.Equal(24, Ohta().Length);
    }

    [Theory]
    [InlineData(401, 731, 10)]
    [InlineData(380, 690, 10)]
    [InlineData(380, 735, 10)]
    [InlineData(380, 764, 24)]
    [InlineData(380, 730, 0)]
    public void Bands_that_do_not_fit_are_refused(int first, int last, int step) => Assert.Throws<ArgumentOutOfRangeException>(
        () => SpectralWeights.For(Illuminant.D50, ColourMatching.TwoDegree, first, last, step));

    internal static Spectrum[] Ohta()
    {
        IReadOnlyList<double[]> rows = PublishedTable.Rows("colour/colorchecker-ohta1997-reflectance.csv");
        return [.. Enumerable.Range(1, rows[0].Length - 1).Select(patch => new Spectrum((int)rows[0][0], 5, [.. rows.Select(r => r[patch])]))];
    }
}
