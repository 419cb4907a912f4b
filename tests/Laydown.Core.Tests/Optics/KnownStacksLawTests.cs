using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Core.Tests.Colour;
using Laydown.Optics.Layers;
using Laydown.Optics.Looks;

namespace Laydown.Core.Tests.Optics;

/// <summary>Stacks whose answer is known beforehand.</summary>
public sealed class KnownStacksLawTests
{
    private static readonly LookInk[] Cmyk = [.. Enumerable.Range(0, 4).Select(i => LookInk.Colour(GenericUvInks.Density((ProcessInk)i)))];
    private static readonly double SurfacesAlone = 2 * 1.5 / ((1.5 * 1.5) + 1);

    [Theory]
    [InlineData(0.01)]
    [InlineData(2)]
    [InlineData(30)]
    public void A_white_that_absorbs_nothing_between_faces_loses_nothing_either_way(double scatter)
    {
        LayerLight film = Saunderson.Film(KubelkaMunk.Layer(0, scatter), Boundary.Ink);
        Assert.Equal(1, film.FrontReflectance + film.Inward, tolerance: 1e-14);
        Assert.Equal(film.Inward, film.Outward, tolerance: 1e-15);
    }

    [Fact]
    public void An_opaque_back_leaves_no_night_and_a_day_that_knows_no_box()
    {
        LookInk black = LookInk.Colour(Bands.Flat(12));
        (double[] Day, double[] Night) Before(double backing) => Solve(new(
            LookSheet.Clear(0.92),
            [new(LookFace.First, [LookInk.White(4)]), new(LookFace.First, Cmyk), new(LookFace.Second, [black])],
            backing), [1, 0.3, 0.1, 0, 0, 1]);
        (double[] day, double[] night) = Before(0.8);
        Assert.All(night, t => Assert.Equal(0, t, tolerance: 1e-11));
        Assert.Equal(Before(0).Day, day);
    }

    [Fact]
    public void A_core_that_lets_nothing_through_hides_the_back()
    {
        LookLayer[] layers = [new(LookFace.First, Cmyk), new(LookFace.Second, Cmyk)];
        StackOptics stack = new(LookSheet.Opaque(0.85), layers, 0.8);
        (double[] bare, double[] night) = Solve(stack, [0.2, 0.4, 0, 0, 0, 0, 0, 0]);
        (double[] covered, _) = Solve(stack, [0.2, 0.4, 0, 0, 1, 1, 1, 0.5]);
        Assert.Equal(bare, covered);
        Assert.All(night, t => Assert.Equal(0, t));
    }

    [Fact]
    public void Without_white_on_a_clear_sheet_the_night_is_front_times_back()
    {
        // T = (1 − R0)²·F·B/(1 − R0²·(F·B)²): stained glass.
        LookLayer[] layers = [new(LookFace.First, Cmyk), new(LookFace.First, [LookInk.White(8)]), new(LookFace.First, Cmyk)];
        double[] spot = [0.3, 0, 1, 0, 0, 0, 0.6, 0, 0.2];
        (_, double[] night) = Solve(new(LookSheet.Clear(SurfacesAlone), layers, 0.8), spot);
        double r = Boundary.Ink.Normal;
        for (int band = 0; band < 36; band++)
        {
            double t = 1;
            for (int ink = 0; ink < 4; ink++)
            {
                double solid = Math.Pow(10, -Cmyk[ink].Density[band]);
                t *= (1 - spot[ink] + (spot[ink] * solid)) * (1 - spot[5 + ink] + (spot[5 + ink] * solid));
            }

            Assert.Equal((1 - r) * (1 - r) * t / (1 - (r * r * t * t)), night[band], tolerance: 1e-12);
        }
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(4)]
    [InlineData(15)]
    public void With_ink_in_front_alone_the_night_stays_under_the_root_of_the_day(double scatter)
    {
        // night/T0 = F·(1 − r_i·ρ*)/(1 − r_i·F2·ρ*) ≤ √(day/R0), ρ* what the core and all behind it send back.
        StackOptics stack = new(
            LookSheet.Clear(SurfacesAlone), [new(LookFace.First, [LookInk.White(scatter, 0.002)]), new(LookFace.First, Cmyk)], backing: 0);
        (double[] day, double[] night) = Spread(stack, [1, 0, 0, 0, 0]);
        (double rho, _) = Back(scatter);
        for (int overprint = 0; overprint < 16; overprint++)
        {
            double[] on = [1, .. Enumerable.Range(0, 4).Select(i => (double)(overprint >> i & 1))];
            (double[] inkedDay, double[] inkedNight) = Spread(stack, on);
            for (int band = 0; band < 36; band++)
            {
                double f = Math.Pow(10, -Enumerable.Range(0, 4).Sum(i => on[i + 1] * Cmyk[i].Density[band]));
                double ri = Boundary.Ink.DiffuseInside, wanted = f * (1 - (ri * rho)) / (1 - (ri * f * f * rho));
                Assert.Equal(wanted, inkedNight[band] / night[band], tolerance: 1e-12);
                Assert.True(inkedNight[band] / night[band] <= Math.Sqrt(inkedDay[band] / day[band]) + 1e-12);
            }
        }
    }

    [Fact]
    public void With_the_lamp_at_nothing_the_lit_view_is_the_day_view()
    {
        LookLayer[] layers = [new(LookFace.First, Cmyk), new(LookFace.First, [LookInk.White(6)]), new(LookFace.First, Cmyk)];
        double[] spot = [0.3, 0.2, 0.7, 0, 1, 0.1, 0.4, 0, 0.05];
        Scene off = new(50, Illuminant.D50, 0, Illuminant.LedB4, 0.8), day = Scene.Day(2000);
        Lab dim = new StackLook(LookSheet.Clear(0.92), layers, off).At(spot).Lab;
        Lab bright = new StackLook(LookSheet.Clear(0.92), layers, day).At(spot).Lab;
        Assert.Equal(0, Ciede2000.Between(dim, bright), tolerance: 1e-9);

        // The lit view adapts by CAT16, the day view by Bradford, from a white that is D50 to a few digits: next to nothing is left.
        SpotNumbers numbers = new StackNumbers(LookSheet.Clear(0.92), layers, off, adaptation: Adaptation.OfRoom).At(spot);
        Assert.Equal(0, Ciede2000.Between(numbers.DayLab, numbers.LitLab), tolerance: 0.02);
        Assert.Equal(numbers.DayCdPerM2, numbers.LitCdPerM2, tolerance: 1e-12);
    }

    [Fact]
    public void A_symmetric_stack_with_pictures_and_faces_swapped_is_the_same_stack()
    {
        LookLayer[] layers = [new(LookFace.First, Cmyk), new(LookFace.Second, Cmyk)];
        foreach (LookSheet sheet in new[] { LookSheet.Clear(0.92), LookSheet.Opal(0.5, 0.45) })
        {
            for (int i = 0; i < 20; i++)
            {
                double[] one = Prints.Scatter(i), other = Prints.Scatter(i + 40);
                (double[] day, double[] night) = Solve(new(sheet, layers, 0.8), [.. one, .. other]);
                (double[] turned, double[] turnedNight) = Solve(new(sheet, layers, 0.8, LookFace.Second), [.. other, .. one]);
                for (int band = 0; band < 36; band++)
                {
                    Assert.Equal(day[band], turned[band], tolerance: 1e-14);
                    Assert.Equal(night[band], turnedNight[band], tolerance: 1e-14);
                }
            }
        }
    }

    [Fact]
    public void Another_lamp_changes_colours_only_through_spectra()
    {
        // A grey stack stays grey under every light; a coloured one does not stay the same.
        LookLayer[] Layers(LookInk ink) => [new(LookFace.First, [ink]), new(LookFace.First, [LookInk.White(6)])];
        Lab Seen(LookInk ink, Illuminant light) =>
            new StackLook(LookSheet.Clear(0.92), Layers(ink), new Scene(500, light, 0, Illuminant.LedB4, 0.8)).At([0.6, 1]).Lab;
        LookInk grey = LookInk.Colour(Bands.Flat(0.4)), magenta = Cmyk[1];
        foreach (Illuminant light in new[] { Illuminant.LedB3, Illuminant.LedB5, Illuminant.A })
        {
            Assert.Equal(0, Ciede2000.Between(Seen(grey, Illuminant.D50), Seen(grey, light)), tolerance: 1e-9);
            Assert.True(Ciede2000.Between(Seen(magenta, Illuminant.D50), Seen(magenta, light)) > 0.5);
        }
    }

    [Fact]
    public void What_a_piece_sends_back_into_the_box_is_its_reflectance_from_behind()
    {
        // Spread light through a solid back ink by the adding method alone; a bare clear sheet by another integral over directions.
        double[] back = new double[36];
        double t = Math.Pow(10, -0.3);
        LookLayer[] layers = [new(LookFace.First, [LookInk.White(12)]), new(LookFace.Second, [LookInk.Colour(Bands.Flat(0.3))])];
        new StackOptics(LookSheet.Clear(SurfacesAlone), layers, 0.8).SolveBack([1, 1], back);
        LayerLight piece = Saunderson.Film(KubelkaMunk.Layer(0.024, 12).Over(LayerLight.Symmetric(0, t)), Boundary.Ink);
        Assert.Equal(piece.BackReflectance, back[7], tolerance: 1e-6);

        new StackOptics(LookSheet.Clear(0.92), layers, 0.8).SolveBack([0, 0], back);
        double inside = LookSheet.Clear(0.92).Straight[0];
        Assert.Equal(SlabLight.Of(new SlabMatter(-Math.Log(inside), 0), Boundary.Ink).DiffuseReflectance, back[7], tolerance: 1e-3);
    }

    [Fact]
    public void A_white_piece_brightens_its_box()
    {
        // 1/(1 − q·R) with q = 0.8 and a piece that sends back R.
        LookLayer[] layers = [new(LookFace.First, [LookInk.White(12)])];
        StackNumbers numbers = new(LookSheet.Clear(0.92), layers, Scene.Lit());
        double[] back = new double[36];
        new StackOptics(LookSheet.Clear(0.92), layers, 0.8).SolveBack([1], back);
        Assert.Equal(1 / (1 - (0.8 * back[0])), numbers.At([1]).LampGain, tolerance: 1e-9);
        Assert.True(numbers.At([1]).LampGain > numbers.At([0]).LampGain && numbers.At([0]).LampGain > 1);
    }

    [Fact]
    public void For_diffuse_light_no_stack_gives_more_than_it_takes()
    {
        for (int i = 0; i < 200; i++)
        {
            double[] s = Prints.Scatter(i);
            LayerLight stack = Boundary.Ink.Layer.Over(KubelkaMunk.Layer(s[0], 20 * s[1])).Over(KubelkaMunk.Layer(3 * s[2], 0))
                .Over(KubelkaMunk.Layer(0.01 * s[3], 4 * s[0])).Over(Boundary.Ink.Layer.Reversed());
            Assert.InRange(stack.FrontReflectance + stack.Inward, 0, 1);
            Assert.InRange(stack.BackReflectance + stack.Outward, 0, 1);
            Assert.Equal(stack.Inward, stack.Outward, tolerance: 1e-15);
        }
    }

    private static (double Rho, double Transmittance) Back(double scatter)
    {
        LayerLight core = KubelkaMunk.Layer(0.002 * scatter, scatter).Over(LayerLight.Symmetric(Boundary.Ink.DiffuseInside, 0));
        return (core.FrontReflectance, core.Inward);
    }

    private static (double[] Day, double[] Night) Solve(StackOptics stack, double[] spot)
    {
        double[] day = new double[36], night = new double[36];
        stack.Solve(spot, day, night);
        return (day, night);
    }

    private static (double[] Day, double[] Night) Spread(StackOptics stack, double[] spot)
    {
        double[] day = new double[36], night = new double[36];
        stack.SolveSpread(spot, day, night);
        return (day, night);
    }
}
