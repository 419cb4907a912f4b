using Laydown.Colour.Inks;
using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Press.Inks;
using Laydown.Shop.Layers;
using Xunit;

namespace Laydown.Edges.Tests.Layers;

public sealed class StackLightsLawTests
{
    private static readonly InkSet Inks = SampleOptics.Inks();
    private static readonly InkOptics Optics = SampleOptics.Optics();

    [Fact]
    public void Optics_that_were_read_come_through_unchanged()
    {
        LookInk white = StackLights.InkOf(InkRole.White, Inks, Optics), cyan = StackLights.InkOf(InkRole.Cyan, Inks, Optics);
        Assert.Equal(SampleOptics.White().Scatter, white.Scatter);
        Assert.Equal(SampleOptics.White().Absorption, white.Absorption);

        // Density is K·X over ln 10; the division and the multiplication each round once.
        for (int band = 0; band < Bands.Count; band++)
            Assert.Equal(SampleOptics.Cyan().Absorption[band], cyan.Density[band] * Math.Log(10), 1e-14);
        Assert.False(StackLights.LightOf(InkRole.White, Inks, Optics).IsGeneric);
    }

    [Theory]
    [InlineData(25, 0.3)]
    [InlineData(50, 0.6)]
    [InlineData(75, 0.8)]
    [InlineData(100, 1)]
    [InlineData(150, 1.6)]
    [InlineData(200, 2)]
    public void A_white_acts_by_its_curve_and_two_planes_share_what_one_cannot_hold(double askedPercent, double laydowns)
    {
        LookInk white = StackLights.InkOf(InkRole.White, Inks, Optics, askedPercent);
        Assert.Equal(laydowns * 8, white.Scatter[0], 1e-12);
        Assert.Equal(laydowns * 0.02, white.Absorption[0], 1e-12);
    }

    [Fact]
    public void What_is_sent_for_a_laydown_makes_that_laydown_act()
    {
        InkLight white = SampleOptics.White();
        foreach (double acting in (double[])[0, 1, 30, 60, 77, 100])
            Assert.Equal(acting / 100, white.Laydowns(white.AskedPercent(acting)), 1e-12);
        IReadOnlyList<double> sent = StackLights.SentFor(InkRole.White, Optics)!;
        Assert.Equal((0, 50, 100), (sent[0], sent[60], sent[100]));
        Assert.Equal(153, StackLights.ActingOf(InkRole.White, Optics)![128] - 1, 1.0);
        Assert.Null(StackLights.SentFor(InkRole.Magenta, Optics));
    }

    [Fact]
    public void A_light_ink_without_readings_is_the_dark_one_thinned_and_says_so()
    {
        RoleLight light = StackLights.LightOf(InkRole.LightCyan, Inks, Optics);
        LookInk dark = StackLights.InkOf(InkRole.Cyan, Inks, Optics);
        Assert.Equal(OpticsOrigin.Thinned, light.AbsorptionFrom);
        for (int band = 0; band < Bands.Count; band++)
            Assert.Equal(0.25 * dark.Density[band], light.Ink.Density[band], 1e-14);
    }

    [Fact]
    public void An_ink_without_optics_is_generic_at_the_density_of_its_set_and_flagged()
    {
        RoleLight magenta = StackLights.LightOf(InkRole.Magenta, Inks, Optics);
        Assert.True(magenta.IsGeneric);
        Assert.Equal(GenericUvInks.Density(ProcessInk.Magenta, 1), magenta.Ink.Density);

        // A white that absorbs nothing lets 1/(1 + S·X) through: density 0.9 is S·X = 10^0.9 − 1.
        Assert.Equal(Math.Pow(10, 0.9) - 1, StackLights.InkOf(InkRole.White, Inks, null).Scatter[20], 1e-12);
    }

    [Fact]
    public void What_is_missing_is_said_for_every_ink_and_nothing_where_all_is_read()
    {
        InkRole[] roles = [InkRole.Cyan, InkRole.Magenta, InkRole.White];
        Finding finding = Assert.Single(StackLights.Missing(roles, Inks, Optics));
        Assert.Contains("Magenta", finding.What, StringComparison.Ordinal);
        Assert.Contains("K·X", finding.Wanted, StringComparison.Ordinal);
        Assert.Equal(3, StackLights.Missing(roles, Inks, null).Count);
    }
}
