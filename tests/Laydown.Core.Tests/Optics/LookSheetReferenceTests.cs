using Laydown.Colour.Spectra;
using Laydown.Core.Tests.Colour;
using Laydown.Optics.Layers;
using Laydown.Optics.Looks;

namespace Laydown.Core.Tests.Optics;

/// <summary>Bare sheets against light followed direction by direction: what docs/decisions/0007 states of them.</summary>
public sealed class LookSheetReferenceTests
{
    public static IEnumerable<TheoryDataRow<double, double>> Opals() =>
        from scatter in new[] { 0.3, 1, 2, 4, 10, 25 }
        from ratio in new[] { 0.0005, 0.005, 0.03 }
        select new TheoryDataRow<double, double>(scatter, ratio);

    [Theory, MemberData(nameof(Opals))]
    public void An_opal_sheet_read_in_diffuse_light_looks_right_at_45_and_before_a_lamp(double scatter, double ratio)
    {
        // The sheet is read as of g = 0.6; one of another g is a little off where it is thin.
        foreach (double g in new[] { 0.6, 0, 0.85 })
        {
            SlabReading truth = SlabLight.Of(SlabMatter.From(new TurbidAmount(ratio * scatter, scatter), g), Boundary.Ink);
            LookSheet sheet = LookSheet.Opal(truth.DiffuseReflectance, truth.DiffuseTransmittance);
            (double black, double night) = Seen(sheet, 0);
            double tolerance = g == 0.6 ? 0.006 : scatter < 1 ? 0.025 : 0.007;
            Assert.Equal(truth.ReflectanceAt45, black, tolerance);
            Assert.Equal(truth.NormalTransmittance, night, tolerance);
            Assert.Equal(truth.Before(0.8), Seen(sheet, 0.8).Day, tolerance: 0.028);

            // Where hardly any light comes through, nothing tells the thickness.
            Assert.False(sheet.IsApproximate);
            if (g == 0.6 && truth.DiffuseTransmittance > 0.01)
                Assert.Equal(scatter, sheet.Scatter[0], tolerance: 0.02 * scatter);
        }
    }

    [Fact]
    public void Every_band_is_read_by_itself()
    {
        double[] reflectance = new double[36], transmittance = new double[36];
        for (int band = 0; band < 36; band++)
        {
            TurbidAmount amount = new(0.02 + (0.001 * band), 3 + (0.05 * band));
            SlabReading truth = SlabLight.Of(SlabMatter.From(amount, 0.6), Boundary.Ink);
            (reflectance[band], transmittance[band]) = (truth.DiffuseReflectance, truth.DiffuseTransmittance);
        }

        LookSheet whole = LookSheet.Opal(reflectance, transmittance);
        foreach (int band in new[] { 0, 17, 35 })
        {
            LookSheet one = LookSheet.Opal(reflectance[band], transmittance[band]);
            Assert.Equal(one.Inside[0].FrontReflectance, whole.Inside[band].FrontReflectance, tolerance: 1e-3);
            Assert.Equal(one.Scatter[0], whole.Scatter[band], tolerance: 5e-3);
        }
    }

    [Fact]
    public void A_clear_sheet_read_in_diffuse_light_as_opal_is_nearly_clear()
    {
        SlabReading truth = SlabLight.Of(new SlabMatter(0.01, 0), Boundary.Ink);
        (double day, double night) = Seen(LookSheet.Opal(truth.DiffuseReflectance + 0.002, truth.DiffuseTransmittance - 0.002), 0);
        Assert.Equal(0, day, tolerance: 0.01);
        Assert.Equal(truth.NormalTransmittance, night, tolerance: 0.015);
    }

    [Theory]
    [InlineData(0.02, 0.5)]
    [InlineData(0.123, 0.75)]
    [InlineData(0.1, 0.9)]
    [InlineData(0.01, 0.99)]
    public void Readings_darker_than_the_faces_alone_stand_for_the_clear_sheet_that_lets_as_much_through(
        double reflectance, double transmittance)
    {
        LookSheet sheet = LookSheet.Opal(reflectance, transmittance);
        Assert.True(sheet.IsApproximate);
        Assert.Equal(0, sheet.Scatter[0]);
        Assert.Equal(0, Seen(sheet, 0).Day, tolerance: 1e-12);

        // No slab with faces lets more through than its faces alone.
        double most = SlabLight.Of(new SlabMatter(0, 0), Boundary.Ink).DiffuseTransmittance;
        double found = SlabLight.Of(new SlabMatter(-Math.Log(sheet.Straight[0]), 0), Boundary.Ink).DiffuseTransmittance;
        Assert.Equal(Math.Min(transmittance, most), found, tolerance: 1e-4);
    }

    [Fact]
    public void Every_pair_of_readings_gives_a_look_that_can_be()
    {
        // The lightest white looks 1.004 at 45:0, as faces sort directions.
        for (int i = 0; i < 60; i++)
        {
            double r = Prints.Scatter(i)[0], t = Prints.Scatter(i)[1] * (1 - r);
            LookSheet sheet = LookSheet.Opal(r, t);
            (double day, double night) = Seen(sheet, 0);
            Assert.InRange(day, 0, 1.004);
            Assert.InRange(night, 0, 1);

            // Straight on a sheet lets more of a lamp through than of diffuse light, the more so the more it absorbs on slanting ways; by
            // day it shows less than with its gloss.
            Assert.InRange(night, (0.95 * t) - 0.001, (1.8 * t) + 0.001);
            Assert.InRange(day, r < 0.3 ? 0 : r - 0.2, r + 0.01);
        }
    }

    [Fact]
    public void A_tinted_clear_sheet_lets_through_what_was_measured_in_every_band()
    {
        double[] measured = [.. Enumerable.Range(0, 36).Select(i => 0.3 + (0.017 * i))];
        double[] day = new double[36], night = new double[36];
        new StackOptics(LookSheet.Clear(measured), [], 0).Solve([], day, night);
        for (int band = 0; band < 36; band++)
            Assert.Equal(measured[band], night[band], tolerance: 1e-12);
    }

    [Fact]
    public void A_rough_face_adds_its_gloss_to_the_day_and_leaves_the_night()
    {
        foreach (LookSheet sheet in new[] { LookSheet.Clear(0.92), LookSheet.Opal(0.5, 0.4), LookSheet.Opaque(0.8) })
        {
            LookSheet rough = sheet.Textured(0.4);
            (double day, double night) = Seen(sheet, 0.5);
            (double dull, double dullNight) = Seen(rough, 0.5);
            Assert.Equal(day + (0.4 * Boundary.Ink.At45), dull, tolerance: 1e-12);
            Assert.Equal(night, dullNight);
            byte[] rgb = new byte[3];
            LookLayer[] ink = [new(LookFace.First, [LookInk.Clear])];
            StackLook look = new(rough, ink, Scene.Day());
            look.Row([255], 1, rgb);
            Assert.InRange(rgb[1], look.At([1]).Green - 1, look.At([1]).Green + 1);
        }
    }

    private static (double Day, double Night) Seen(LookSheet sheet, double backing)
    {
        double[] day = new double[Bands.Count], night = new double[Bands.Count];
        new StackOptics(sheet, [], backing).Solve([], day, night);
        return (day[20], night[20]);
    }
}
