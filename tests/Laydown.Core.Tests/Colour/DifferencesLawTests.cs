using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;

namespace Laydown.Core.Tests.Colour;

/// <summary>Laws of adaptation, hue angles, differences and metamerism.</summary>
public sealed class DifferencesLawTests
{
    private static readonly Xyz D50 = new(96.42, 100, 82.51), A = new(109.85, 100, 35.58);

    [Theory]
    [InlineData(20, 30, 40)]
    [InlineData(0, 0, 0)]
    [InlineData(80, 5, 1)]
    public void Cat16_there_and_back_is_the_same(double x, double y, double z)
    {
        Xyz back = Cat16.Adapt(Cat16.Adapt(new(x, y, z), D50, A), A, D50);
        Assert.Equal(x, back.X, tolerance: 1e-10);
        Assert.Equal(y, back.Y, tolerance: 1e-10);
        Assert.Equal(z, back.Z, tolerance: 1e-10);
    }

    [Fact]
    public void Cat16_takes_white_to_white_and_does_nothing_without_adaptation()
    {
        Xyz white = Cat16.Adapt(D50, D50, A), same = Cat16.Adapt(new(20, 30, 40), D50, A, 0), half = Cat16.Adapt(D50, D50, A, 0.5);
        Assert.Equal(A.X, white.X, tolerance: 1e-10);
        Assert.Equal(A.Z, white.Z, tolerance: 1e-10);
        Assert.Equal(40, same.Z, tolerance: 1e-10);
        Assert.Equal((D50.Z + A.Z) / 2, half.Z, tolerance: 1e-10);
        Assert.Throws<ArgumentException>(() => Cat16.Adapt(D50, new(0, 0, 0), A));
        Assert.Throws<ArgumentException>(() => Cat16.Adapt(D50, D50, A, 1.1));
    }

    [Theory]
    [InlineData(50, 0, 0, 0, 0)]
    [InlineData(50, 3, 0, 3, 0)]
    [InlineData(50, 0, 4, 4, 90)]
    [InlineData(50, -3, -3, 4.2426406871, 225)]
    [InlineData(50, 5, -1e-30, 5, 0)]
    public void Hue_runs_from_red_by_yellow(double l, double a, double b, double chroma, double hue)
    {
        Lch lch = Lch.From(new(l, a, b));
        Assert.Equal(chroma, lch.C, tolerance: 1e-9);
        Assert.Equal(hue, lch.HueDegrees, tolerance: 1e-9);
        Assert.InRange(Cie76.Between(new(l, a, b), lch.ToLab()), 0, 1e-12);
    }

    [Fact]
    public void Cie94_weighs_lightness_chroma_and_hue_as_its_formula_says()
    {
        // By hand for a standard of chroma 50: SC = 1 + 0.045·50 = 3.25, SH = 1 + 0.015·50 = 1.75.
        Lab standard = new(50, 30, 40);
        Assert.Equal(2, Cie94.Between(standard, standard with { L = 52 }), tolerance: 1e-12);
        Assert.Equal(5 / 3.25, Cie94.Between(standard, new(50, 33, 44)), tolerance: 1e-12);
        Assert.Equal(Math.Sqrt(200) / 1.75, Cie94.Between(standard, new(50, 40, 30)), tolerance: 1e-12);
        Assert.Equal(5, Cie76.Between(standard, new(50, 33, 44)), tolerance: 1e-12);
        Assert.Equal(Cie76.Between(new(50, 0, 0), new(48, 0, 0)), Cie94.Between(new(50, 0, 0), new(48, 0, 0)), tolerance: 1e-12);
    }

    [Fact]
    public void Equal_spectra_and_spectra_that_differ_by_a_factor_are_no_metamers()
    {
        Spectrum[] patches = SpectralWeightsLawTests.Ohta();
        foreach (Spectrum patch in patches)
        {
            Spectrum darker = patch with { Values = [.. patch.Values.Select(v => 0.9 * v)] };
            Assert.Equal(0, Metamerism.Index(patch, patch, Illuminant.D50, Illuminant.A, ColourMatching.TwoDegree), tolerance: 1e-9);
            Assert.Equal(0, Metamerism.Index(patch, darker, Illuminant.D50, Illuminant.A, ColourMatching.TwoDegree), tolerance: 1e-9);
        }
    }

    [Fact]
    public void A_grey_made_of_three_narrow_bands_parts_from_an_even_grey_under_another_light()
    {
        Spectrum even = new(380, 10, Bands.Flat(0.2));
        Spectrum spiky = new(380, 10, [.. Enumerable.Range(0, 36).Select(b => 0.2 + (b % 9 < 4 ? 0.15 : -0.12))]);
        double[] apart = [.. ((Illuminant[])[Illuminant.D50, Illuminant.A, CieIlluminants.Named("FL11")!]).Select(l =>
            Metamerism.Index(even, spiky, Illuminant.D50, l, ColourMatching.TwoDegree))];
        Assert.Equal(0, apart[0], tolerance: 1e-9); // in the light of the match nothing is left
        Assert.All(apart[1..], d => Assert.InRange(d, 0.5, 30));
        Assert.Throws<ArgumentException>(() => Metamerism.Index(even, new(400, 10, Bands.Flat(0.2)), Illuminant.D50, Illuminant.A, ColourMatching.TwoDegree));
    }
}
