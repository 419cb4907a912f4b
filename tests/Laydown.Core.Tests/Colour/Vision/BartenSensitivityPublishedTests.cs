using Laydown.Colour.Vision;
using Xunit;

namespace Laydown.Core.Tests.Colour.Vision;

/// <summary>Values printed in the tests of an open library of colour science for the same function [ColourScience]; to 4 decimals,
/// tolerance half the last.</summary>
public sealed class BartenSensitivityPublishedTests
{
    [Fact]
    public void Equals_the_printed_sensitivity_with_every_argument_given()
    {
        BartenEye eye = new(0.01, 65, 60, 60) { WidestDegrees = 12, PhotonsPerTroland = 1.2e6 };
        Assert.Equal(352.7613, BartenSensitivity.At(4, eye), 0.00005);
    }

    /// <summary>Defaults of that library: a pupil of 2.1 mm, 20 cd/m², σ and E from them, p = 1.2274·10⁶.</summary>
    [Fact]
    public void Equals_the_printed_sensitivity_with_the_eye_computed_from_pupil_and_luminance()
    {
        BartenEye eye = new(BartenEye.SigmaFor(2.1), BartenEye.TrolandsFor(20, 2.1));
        Assert.Equal(360.8691, BartenSensitivity.At(4, eye), 0.00005);
    }
}

public sealed class BartenSensitivityLawTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(20)]
    [InlineData(500)]
    public void It_rises_to_one_peak_between_one_and_eight_periods_a_degree_and_falls_on_both_sides(double cdPerM2)
    {
        BartenEye eye = BartenEye.For(cdPerM2);
        (double at, double best) = BartenSensitivity.Best(eye);
        Assert.InRange(at, 1, 8);
        int top = (int)Math.Round(at / 0.05);
        for (int i = 1; i < 1200; i++)
        {
            (double here, double next) = (BartenSensitivity.At(i * 0.05, eye), BartenSensitivity.At((i + 1) * 0.05, eye));
            Assert.True(here <= best && (i < top ? next > here : next < here), Invariant($"{cdPerM2} cd/m², {i * 0.05} c/deg"));
        }
    }

    [Fact]
    public void More_light_shows_weaker_gratings_and_evenness_is_no_contrast()
    {
        double[] lights = [0.1, 1, 10, 100, 1000];
        double[] seen = [.. lights.Select(l => BartenSensitivity.At(5, BartenEye.For(l)))];
        Assert.Equal(seen.Order(), seen);
        Assert.Equal(0, BartenSensitivity.At(0, BartenEye.For(100)));
        Assert.InRange(BartenSensitivity.At(1e-6, BartenEye.For(100)), 0, 0.01);
    }

    /// <summary>The pupil closes with light: from near 8 mm in the dark to near 2 mm in bright light.</summary>
    [Fact]
    public void A_wider_pupil_spreads_a_line_more_and_lets_more_light_in()
    {
        Assert.True(BartenEye.SigmaFor(6) > BartenEye.SigmaFor(2));
        Assert.True(BartenEye.TrolandsFor(10, 6) > BartenEye.TrolandsFor(10, 2));
        Assert.True(BartenEye.For(0.01).SigmaDegrees > BartenEye.For(1000).SigmaDegrees);
    }
}

public sealed class BartenSensitivityRefusalTests
{
    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(1001)]
    public void A_frequency_that_is_none_is_refused(double u) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BartenSensitivity.At(u, BartenEye.For(100)));

    [Theory]
    [InlineData(0, 60)]
    [InlineData(double.NaN, 60)]
    [InlineData(100, 0)]
    public void A_field_without_light_or_size_is_refused(double light, double field) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BartenEye.For(light, field));
}
