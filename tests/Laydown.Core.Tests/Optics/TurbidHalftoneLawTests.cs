using Laydown.Core.Tests.Colour;
using Laydown.Optics.Layers;

namespace Laydown.Core.Tests.Optics;

/// <summary>Halftones of inks that scatter as well as absorb.</summary>
public sealed class TurbidHalftoneLawTests
{
    private static readonly TurbidAmount[] Inks = [new(1.2, 0.1), new(0.3, 0.02), new(0.02, 1.5), new(2, 0)];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3.7)]
    [InlineData(1000)]
    [InlineData(double.PositiveInfinity)]
    public void Solid_overprints_are_layers_of_the_summed_amounts(double n)
    {
        TurbidHalftone halftone = new(Inks, n);
        for (int overprint = 0; overprint < 16; overprint++)
        {
            double[] on = [.. Enumerable.Range(0, 4).Select(i => (double)(overprint >> i & 1))];
            LayerLight wanted = Inks.Where((_, i) => on[i] == 1).Aggregate(default(TurbidAmount), (sum, ink) => sum.Plus(ink)).Layer;
            LayerLight found = halftone.Layer(on);
            Assert.Equal(wanted.FrontReflectance, found.FrontReflectance, tolerance: 1e-10);
            Assert.Equal(wanted.Inward, found.Inward, tolerance: 1e-10);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5.5)]
    public void Clear_inks_mix_as_Yule_and_Nielsen_say(double n)
    {
        // T = (Σ w T^(1/n))^n; screens are independent, so the sum is a product.
        TurbidAmount[] clear = [new(0.4, 0), new(1.7, 0)];
        LayerLight found = new TurbidHalftone(clear, n).Layer([0.3, 0.6]);
        double wanted = Math.Pow((0.7 + (0.3 * Math.Exp(-0.4 / n))) * (0.4 + (0.6 * Math.Exp(-1.7 / n))), n);
        Assert.Equal(wanted, found.Inward, tolerance: 1e-12);
        Assert.Equal(0, found.FrontReflectance, tolerance: 1e-15);
    }

    [Fact]
    public void Without_end_n_is_the_logarithmic_mean()
    {
        double[] spot = [0.2, 0.9, 0.4, 0.1];
        double absorption = (0.2 * 1.2) + (0.9 * 0.3) + (0.4 * 0.02) + (0.1 * 2), scatter = (0.2 * 0.1) + (0.9 * 0.02) + (0.4 * 1.5);
        LayerLight wanted = new TurbidAmount(absorption, scatter).Layer;
        LayerLight endless = new TurbidHalftone(Inks, double.PositiveInfinity).Layer(spot);
        LayerLight large = new TurbidHalftone(Inks, 1e5).Layer(spot);
        Assert.Equal(wanted.FrontReflectance, endless.FrontReflectance, tolerance: 1e-14);
        Assert.Equal(wanted.FrontReflectance, large.FrontReflectance, tolerance: 1e-5);
        Assert.Equal(wanted.Inward, large.Inward, tolerance: 1e-5);
    }

    [Fact]
    public void Slices_laid_over_one_another_are_the_layer()
    {
        // n = 3 by the adding method alone, without K and S.
        double[] spot = [0.5, 0.25, 0.8, 0];
        LayerLight slice = new TurbidHalftone([.. Inks.Select(i => i.Times(1.0 / 3))]).Layer(spot);
        LayerLight found = new TurbidHalftone(Inks, 3).Layer(spot), wanted = slice.Over(slice).Over(slice);
        Assert.Equal(wanted.FrontReflectance, found.FrontReflectance, tolerance: 1e-12);
        Assert.Equal(wanted.Inward, found.Inward, tolerance: 1e-12);
    }

    [Fact]
    public void More_light_never_comes_out_than_goes_in()
    {
        TurbidAmount[] white = [new(0, 2), new(0, 0.3), new(0, 30)];
        foreach (double n in new[] { 1, 2.5, 20, double.PositiveInfinity })
        {
            for (int i = 0; i < 50; i++)
            {
                LayerLight found = new TurbidHalftone(white, n).Layer(Prints.Scatter(i).AsSpan(0, 3));
                Assert.Equal(1, found.FrontReflectance + found.Inward, tolerance: 1e-9);
            }
        }
    }

    [Fact]
    public void A_layer_too_dense_for_numbers_lets_nothing_through() =>
        Assert.Equal(0, new TurbidHalftone([new(5000, 1)], 2).Layer([1]).Inward);

    [Fact]
    public void What_is_no_halftone_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new TurbidHalftone(Inks, 0.9));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TurbidHalftone(new TurbidAmount[9]));
        Assert.Throws<ArgumentException>(() => new TurbidHalftone([]));
        Assert.Throws<ArgumentException>(() => new TurbidHalftone(Inks).Layer([1, 0]));
    }
}
