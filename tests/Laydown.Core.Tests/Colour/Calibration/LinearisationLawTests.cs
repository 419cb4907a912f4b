using Laydown.Colour.Calibration;
using Laydown.Colour.Curves;
using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Raster.Separation;

namespace Laydown.Core.Tests.Colour.Calibration;

/// <summary>Linearisation of a press whose dot gain is known.</summary>
public sealed class LinearisationLawTests
{
    public static TheoryData<LinearisationAim, double> Cases() => new()
    {
        { LinearisationAim.ToneValue, 100 }, { LinearisationAim.ToneValue, 83 }, { LinearisationAim.ColourDifference, 100 },
        { LinearisationAim.ColourDifference, 70 }, { LinearisationAim.Density, 100 }, { LinearisationAim.Density, 91.5 },
    };

    // 21 steps and straight lines between 33 values leave at most half a percent of tone; the uncorrected press is off by more than 10.
    [Theory, MemberData(nameof(Cases))]
    public void The_corrected_press_prints_even_steps(LinearisationAim aim, double limit)
    {
        foreach (Wedge wedge in Wedges.From(SyntheticPress.Wedges(), "press").Value)
        {
            InkLinearisation made = Linearisation.Make(wedge, aim, limit, "press").Value;
            InkCurve sent = InkCurve.Through(made.Curve, made.LimitPercent);
            int ink = Array.IndexOf(SyntheticPress.Names, wedge.Ink);
            WedgeStep[] printed = [.. Enumerable.Range(0, 11).Select(t => Printed(ink, sent[(ushort)(t * 6553.5)] / 65535.0))];
            double[] tones = ToneValues.Of(printed, aim);
            for (int t = 0; t <= 10; t++)
                Assert.Equal(10 * t, tones[t], 0.5);
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void The_curve_rises_strictly_and_bends_little(LinearisationAim aim, double limit)
    {
        foreach (Wedge wedge in Wedges.From(SyntheticPress.Wedges(), "press").Value)
        {
            InkLinearisation made = Linearisation.Make(wedge, aim, limit, "press").Value;
            Assert.Equal(33, made.Curve.Count);
            Assert.Equal((0.0, 100.0), (made.Curve[0], made.Curve[^1]));
            for (int i = 1; i < made.Curve.Count; i++)
                Assert.True(made.Curve[i] > made.Curve[i - 1]);

            // The known press has a bend of its own: read in 401 steps it is nearly exact. 21 steps add a quarter of it at most.
            Wedge exact = Wedges.From(SyntheticPress.Wedges(400), Array.IndexOf(SyntheticPress.Names, wedge.Ink), "press").Value;
            double own = Linearisation.Make(exact, aim, limit, "press").Value.Roughness;
            Assert.InRange(made.Roughness, 0, (1.25 * own) + 0.5);
        }
    }

    [Fact]
    public void Tone_after_the_curve_is_the_tone_wanted()
    {
        Wedge wedge = Wedges.From(SyntheticPress.Wedges(), 1, "press").Value;
        InkLinearisation made = Linearisation.Make(wedge, LinearisationAim.ToneValue, 100, "press").Value;

        // At the curve's own values the inverse is exact; between them straight lines cost less than 0.2 %.
        for (int i = 0; i < 33; i++)
            Assert.Equal(i * 3.125, Linearisation.ToneAfter(wedge, made, i * 3.125), 1e-9);
        for (double t = 0; t <= 100; t += 0.5)
            Assert.Equal(t, Linearisation.ToneAfter(wedge, made, t), 0.2);
    }

    [Fact]
    public void Noise_of_the_readings_leaves_a_strictly_rising_curve()
    {
        ReadingSet set = SyntheticPress.Wedges(40);
        ReadingSet noisy = set with
        {
            Patches = [.. set.Patches.Select((p, i) => p with { Lab = new(p.Lab.L + (0.8 * (Prints.Scatter(i)[0] - 0.5)), p.Lab.A,
                p.Lab.B) })],
        };
        foreach (Wedge wedge in Wedges.From(noisy, "press").Value)
        {
            InkLinearisation made = Linearisation.Make(wedge, LinearisationAim.ToneValue, 100, "press").Value;
            for (int i = 1; i < made.Curve.Count; i++)
                Assert.True(made.Curve[i] > made.Curve[i - 1]);
        }
    }

    [Fact]
    public void White_over_black_is_linearised_by_its_tone_value()
    {
        Patch[] patches = [.. Enumerable.Range(0, 21).Select(s => new Patch("W" + s, [s / 20.0], new(12 + (80 * Math.Sqrt(s / 20.0)), 0,
            0), null))];
        Wedge wedge = Wedges.From(new("white", ["White"], MeasuredHow.Unsaid, patches), 0, "white").Value;
        InkLinearisation made = Linearisation.Make(wedge, LinearisationAim.ToneValue, 100, "white").Value;

        // L* rises as the root of the ink, so a tone t wants t² of ink; the first step of the wedge, 22 % of tone wide, is a cubic, not
        // a root.
        for (int i = 0; i <= 32; i++)
            Assert.Equal(100 * i / 32.0 * i / 32.0, made.Curve[i], i < 12 ? 2.5 : 0.15);
    }

    [Fact]
    public void Repeats_are_meaned_and_a_stray_one_is_named()
    {
        ReadingSet set = SyntheticPress.Wedges();
        Patch good = set.Patches.First(p => p.Id == "Cyan10");
        Patch[] more = [.. Enumerable.Range(0, 4).Select(i => good with { Lab = good.Lab with { L = good.Lab.L + (0.1 * (i - 1.5)) } })];
        Patch stray = good with { Id = "stray", Lab = good.Lab with { B = good.Lab.B + 9 } };
        Wedge wedge = Wedges.From(set with { Patches = [.. set.Patches, .. more, stray] }, 0, "press").Value;
        Assert.Equal(5, wedge.Steps[10].Reads);
        Assert.Equal(good.Lab.L, wedge.Steps[10].Lab.L, 1e-9);
        Assert.Contains("stray", Assert.Single(wedge.Rejected), StringComparison.Ordinal);
    }

    // V of a neutral step is L* in all three values, so the tone value of a neutral ramp is the share of lightness: [ISO20654] by hand.
    [Theory]
    [InlineData(100, 0), InlineData(75, 31.25), InlineData(60, 50), InlineData(20, 100)]
    public void Tone_value_of_a_neutral_ramp_is_its_share_of_lightness(double l, double tone) =>
        Assert.Equal(tone, ToneValues.Sctv(new(l, 0, 0), new(100, 0, 0), new(20, 0, 0)), 1e-9);

    [Fact]
    public void Tone_value_by_its_definition_in_tristimulus_values()
    {
        Lab paper = new(94, -1, 3), step = new(71, 30, -4), solid = new(48, 70, -2);
        double Expected(Lab t) => Math.Sqrt(Enumerable.Range(0, 3).Sum(i => Math.Pow(V(t, i) - V(paper, i), 2)));
        Assert.Equal(100 * Expected(step) / Expected(solid), ToneValues.Sctv(step, paper, solid), 1e-9);

        static double V(Lab lab, int which)
        {
            Xyz xyz = lab.ToXyz(ReadingColour.White), white = ReadingColour.White;
            return (116 * Math.Cbrt(which switch { 0 => xyz.X / white.X, 1 => xyz.Y / white.Y, _ => xyz.Z / white.Z })) - 16;
        }
    }

    [Fact]
    public void A_monotone_curve_never_overshoots_and_its_inverse_is_exact()
    {
        MonotoneCurve curve = new([0, 0.1, 0.2, 0.6, 0.65, 1], [0, 0.5, 0.52, 0.53, 0.99, 1]);
        double before = 0;
        for (int i = 0; i <= 1000; i++)
        {
            double value = curve.At(i / 1000.0);
            Assert.InRange(value, before, 1);
            Assert.Equal(value, curve.At(curve.Inverse(value)), 1e-11);
            before = value;
        }
    }

    [Fact]
    public void Pooling_gives_the_nearest_rising_values()
    {
        Assert.Equal([(0, 0, 1.0), (1, 2, 2.5), (3, 5, 4.0)], IsotonicSteps.Pools([1, 3, 2, 6, 4, 2], [1, 1, 1, 1, 1, 1]));
        Assert.Equal([(0, 1, 1.25)], IsotonicSteps.Pools([2, 1], [1, 3]));
    }

    private static WedgeStep Printed(int ink, double amount) =>
        new(amount, SyntheticPress.Print([.. Enumerable.Range(0, 4).Select(i => i == ink ? amount : 0)]), 1);
}
