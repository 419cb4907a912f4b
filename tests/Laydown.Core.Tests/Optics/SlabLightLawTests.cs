using Laydown.Optics.Layers;

namespace Laydown.Core.Tests.Optics;

/// <summary>What any slab must do with light.</summary>
public sealed class SlabLightLawTests
{
    [Theory]
    [InlineData(0.05, 0.0)]
    [InlineData(3, 0.6)]
    [InlineData(40, 0.85)]
    public void Nothing_is_lost_without_absorption(double thickness, double asymmetry)
    {
        // What is lost or won here is the error of the integrals over directions: R and T of slabs are no better than this.
        SlabReading found = SlabLight.Of(new SlabMatter(thickness, 1, asymmetry), Boundary.Ink);
        Assert.Equal(1, found.DiffuseReflectance + found.DiffuseTransmittance, tolerance: 2e-5);
        Assert.Equal(1, found.NormalReflectance + found.NormalTransmittance, tolerance: 2e-5);
    }

    [Fact]
    public void Without_scatter_it_is_the_clear_slab()
    {
        // T = (1 − R0)²t/(1 − R0²t²) straight on; the diffuse mean over directions by another integral.
        const double absorbed = 0.4;
        SlabReading found = SlabLight.Of(new SlabMatter(absorbed, 0), Boundary.Ink);
        double Through(double sine)
        {
            double r = Boundary.Ink.AtSine(sine), t = Math.Exp(-absorbed / Math.Sqrt(1 - (sine * sine / 2.25)));
            return r >= 1 ? 0 : (1 - r) * (1 - r) * t / (1 - (r * r * t * t));
        }

        Assert.Equal(Through(0), found.NormalTransmittance, tolerance: 1e-7);
        Assert.Equal(Boundary.MeanOverDirections(Through), found.DiffuseTransmittance, tolerance: 1e-6);
        Assert.Equal(0, found.ReflectanceAt45, tolerance: 1e-12);
    }

    [Fact]
    public void A_slab_of_nothing_is_its_two_faces()
    {
        double normal = Boundary.Ink.Normal;
        SlabReading found = SlabLight.Of(new SlabMatter(0, 0), Boundary.Ink);
        Assert.Equal((1 - normal) / (1 + normal), found.NormalTransmittance, tolerance: 1e-8);
        Assert.Equal(1, found.DiffuseReflectance + found.DiffuseTransmittance, tolerance: 1e-5);
    }

    [Fact]
    public void A_slab_cut_in_two_is_the_same_slab()
    {
        SlabReading whole = SlabLight.Of(new SlabMatter(5, 0.97, 0.5), Boundary.Ink);
        SlabReading cut = SlabLight.Of([new SlabMatter(1.7, 0.97, 0.5), new SlabMatter(3.3, 0.97, 0.5)], Boundary.Ink);
        Assert.Equal(whole.DiffuseReflectance, cut.DiffuseReflectance, tolerance: 1e-6);
        Assert.Equal(whole.NormalTransmittance, cut.NormalTransmittance, tolerance: 1e-6);
        Assert.Equal(whole.ReflectanceAt45, cut.ReflectanceAt45, tolerance: 1e-6);
    }

    [Fact]
    public void Two_different_slabs_let_as_much_through_either_way()
    {
        SlabMatter one = new(0.6, 0), other = new(4, 0.99, 0.6);
        SlabReading forth = SlabLight.Of([one, other], Boundary.Ink), back = SlabLight.Of([other, one], Boundary.Ink);
        Assert.Equal(forth.DiffuseTransmittance, back.DiffuseTransmittance, tolerance: 1e-6);
        Assert.True(forth.DiffuseReflectance < back.DiffuseReflectance - 0.1);
    }

    [Fact]
    public void A_thick_white_looks_as_even_as_two_fluxes_say()
    {
        // Light deep in a white is even: far from the faces nothing is left to follow.
        SlabReading slab = SlabLight.Of(SlabMatter.From(new TurbidAmount(0, 200)), Boundary.Ink);
        Assert.Equal(Saunderson.SeenAt45(KubelkaMunk.Layer(0, 200).FrontReflectance, Boundary.Ink), slab.ReflectanceAt45, tolerance: 0.01);
    }

    [Fact]
    public void Matter_and_amounts_there_and_back()
    {
        TurbidAmount amount = new(0.4, 6);
        TurbidAmount found = SlabMatter.From(amount, 0.7).ToAmount();
        Assert.Equal(amount.Absorption, found.Absorption, tolerance: 1e-14);
        Assert.Equal(amount.Scatter, found.Scatter, tolerance: 1e-13);
        Assert.Equal(new TurbidAmount(0, 0), SlabMatter.From(new(0, 0)).ToAmount());
    }

    [Fact]
    public void Matter_that_mostly_absorbs_has_no_amount()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() => new SlabMatter(1, 0.3, 0.6).ToAmount());
        Assert.Contains("S times thickness comes out -", refused.Message, StringComparison.Ordinal);
    }
}
