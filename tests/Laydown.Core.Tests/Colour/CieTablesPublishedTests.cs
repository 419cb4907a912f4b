using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;

namespace Laydown.Core.Tests.Colour;

/// <summary>White points and chromaticities of the built-in illuminants as CIE 015:2018 prints them (figures from memory, half their last digit).</summary>
public sealed class CieTablesPublishedTests
{
    [Theory]
    [InlineData("LED-B1", 0.4560, 0.4078)]
    [InlineData("LED-B2", 0.4357, 0.4012)]
    [InlineData("LED-B3", 0.3756, 0.3723)]
    [InlineData("LED-B4", 0.3422, 0.3502)]
    [InlineData("LED-B5", 0.3118, 0.3236)]
    [InlineData("LED-BH1", 0.4474, 0.4066)]
    [InlineData("LED-RGB1", 0.4557, 0.4211)]
    [InlineData("LED-V1", 0.4548, 0.4044)]
    [InlineData("LED-V2", 0.3781, 0.3775)]
    [InlineData("FL1", 0.3131, 0.3371)]
    [InlineData("FL2", 0.3721, 0.3751)]
    [InlineData("FL4", 0.4402, 0.4031)]
    [InlineData("FL7", 0.3129, 0.3292)]
    [InlineData("FL8", 0.3458, 0.3586)]
    [InlineData("FL11", 0.3805, 0.3769)]
    [InlineData("FL12", 0.4370, 0.4042)]
    [InlineData("D50", 0.3457, 0.3585)]
    [InlineData("D55", 0.3324, 0.3474)]
    [InlineData("D65", 0.3127, 0.3290)]
    [InlineData("D75", 0.2990, 0.3149)]
    [InlineData("C", 0.3101, 0.3162)]
    [InlineData("A", 0.4476, 0.4074)]
    public void Chromaticity_summed_every_5_nm_is_as_printed(string name, double x, double y)
    {
        // The tables of LEDs agree with their printed chromaticities only when summed from 380 nm to 780 nm every 5 nm.
        Xyz white = SpectralWeights.For(CieIlluminants.Named(name)!, ColourMatching.TwoDegree, 380, 780, 5).White;
        double sum = white.X + white.Y + white.Z;
        Assert.Equal(x, white.X / sum, tolerance: 0.000051);
        Assert.Equal(y, white.Y / sum, tolerance: 0.000051);
    }

    [Theory]
    [InlineData("D50", 96.72, 81.43)]
    [InlineData("D65", 94.81, 107.32)]
    [InlineData("A", 111.14, 35.20)]
    public void White_points_for_10_degrees_are_as_printed(string name, double x, double z)
    {
        // Printed from sums every 5 nm; two decimals.
        Xyz white = SpectralWeights.For(CieIlluminants.Named(name)!, ColourMatching.TenDegree, 380, 780, 5).White;
        Assert.Equal(x, white.X, tolerance: 0.006);
        Assert.Equal(z, white.Z, tolerance: 0.006);
    }

    [Fact]
    public void The_ten_degree_table_is_that_of_the_tests()
    {
        IReadOnlyList<double[]> rows = PublishedTable.Rows("colour/cmf-1964-10deg-1nm.csv");
        Assert.Equal(830, ColourMatching.TenDegree.LastNm);
        Assert.All(rows, r => Assert.Equal(r[1..], ColourMatching.TenDegree.At((int)r[0]).ToArray()));
    }

    [Fact]
    public void Names_are_known_in_any_case_and_no_other()
    {
        Assert.Equal(24, CieIlluminants.All.Count);
        Assert.Equal("FL3.12", CieIlluminants.Named("fl3.12")!.Name);
        Assert.Null(CieIlluminants.Named("D51"));
    }

    [Fact]
    public void The_sample_spectrum_under_A_has_its_published_values()
    {
        // 5 nm practice: 14.46372173, 10.85832502, 2.04664734, from the tests of another library; half their last digit.
        IReadOnlyList<double[]> rows = [.. PublishedTable.Rows("colour/e308-sample-spectrum.csv").Where(r => r[0] >= 360)];
        Xyz xyz = SpectralWeights.For(Illuminant.A, ColourMatching.TwoDegree, 360, (int)rows[^1][0], 5).Of([.. rows.Select(r => r[1])]);
        Assert.Equal(14.46372173, xyz.X, tolerance: 0.000000006);
        Assert.Equal(10.85832502, xyz.Y, tolerance: 0.000000006);
        Assert.Equal(2.04664734, xyz.Z, tolerance: 0.000000006);
    }
}
