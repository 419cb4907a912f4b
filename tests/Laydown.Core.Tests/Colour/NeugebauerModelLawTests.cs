using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;

namespace Laydown.Core.Tests.Colour;

/// <summary>What any Neugebauer model must do, whatever its inks.</summary>
public sealed class NeugebauerModelLawTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3.7)]
    public void Solids_give_their_overprints(double n)
    {
        NeugebauerModel model = Prints.Model(n);
        for (int inks = 0; inks < 16; inks++)
        {
            double[] seen = model.Reflectance([inks & 1, inks >> 1 & 1, inks >> 2 & 1, inks >> 3 & 1]);
            for (int band = 0; band < Bands.Count; band++)
                Assert.Equal(Prints.Overprints[inks][band], seen[band], tolerance: 1e-12);
        }
    }

    [Fact]
    public void Without_spread_of_light_a_half_tone_is_the_mean_of_paper_and_solid()
    {
        double[] seen = Prints.Model(1).Reflectance([0.5, 0, 0, 0]);
        Assert.Equal((Prints.Overprints[0][10] + Prints.Overprints[1][10]) / 2, seen[10], tolerance: 1e-12);
    }

    [Fact]
    public void A_large_factor_goes_to_the_geometric_mean()
    {
        double[] seen = Prints.Model(100).Reflectance([0, 0.5, 0, 0]);
        Assert.Equal(Math.Sqrt(Prints.Overprints[0][15] * Prints.Overprints[2][15]), seen[15], tolerance: 0.01);
    }

    [Fact]
    public void More_light_spread_makes_a_half_tone_darker() =>
        Assert.True(Prints.Model(1).ToXyz([0.5, 0.5, 0, 0]).Y > Prints.Model(2).ToXyz([0.5, 0.5, 0, 0]).Y);

    [Fact]
    public void The_fast_way_equals_the_plain_way()
    {
        NeugebauerModel model = Prints.Model();
        Xyz[] fast = new Xyz[4], plain = new Xyz[4];
        for (int i = 0; i < 200; i++)
        {
            double[] inks = Prints.Scatter(i);
            Xyz a = model.ToXyz(inks, fast), b = model.ToXyzByBands(inks, plain), c = model.ToXyz(inks);
            Assert.Equal(b.X, a.X, tolerance: 1e-9);
            Assert.Equal(b.Y, a.Y, tolerance: 1e-9);
            Assert.Equal(c.Z, a.Z, tolerance: 1e-9);
            for (int ink = 0; ink < 4; ink++)
                Assert.Equal(plain[ink].Y, fast[ink].Y, tolerance: 1e-9);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void Slopes_are_those_of_small_steps(double n)
    {
        NeugebauerModel model = Prints.Model(n);
        Xyz[] slopes = new Xyz[4];
        double[] at = [0.3, 0.6, 0.2, 0.4];
        Xyz here = model.ToXyz(at, slopes);
        for (int ink = 0; ink < 4; ink++)
        {
            double[] aside = [.. at];
            aside[ink] += 1e-6;
            Assert.Equal((model.ToXyz(aside).X - here.X) / 1e-6, slopes[ink].X, tolerance: 1e-3);
        }
    }

    [Fact]
    public void Wrong_overprints_are_refused()
    {
        SpectralWeights weights = SpectralWeights.For(Illuminant.D50);
        Assert.Throws<ArgumentException>(() => new NeugebauerModel([Bands.Flat(1), Bands.Flat(0.5), Bands.Flat(0.1)], 2, weights));
        Assert.Throws<ArgumentException>(() => new NeugebauerModel([Bands.Flat(1), Bands.Flat(0)], 2, weights));
        Assert.Throws<ArgumentException>(() => Prints.Model().ToXyz([0.1, 0.2]));
    }
}
