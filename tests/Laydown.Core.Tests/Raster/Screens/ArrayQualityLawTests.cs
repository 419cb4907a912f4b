using Laydown.Raster.Screens;

namespace Laydown.Core.Tests.Raster.Screens;

/// <summary>
/// How even the dots of arrays are, over ten seeds. Where no source is named, the bounds are own measurement: a little beyond what ten
/// arrays of another
/// make (128 × 128) showed, and far from what ordered dither and plain error diffusion show.
/// </summary>
public sealed class ArrayQualityLawTests
{
    [Fact]
    public void The_judge_finds_white_noise_white()
    {
        // Ten pictures averaged: −10 dB; power 1 at all frequencies. Bounds: four times the scatter of five runs.
        foreach (double tone in Dots.Tones)
        {
            DotSpectrum white = Dots.Spectrum(i => Dots.White(i + 1, tone), tone);
            Assert.InRange(white.MedianAnisotropyDb, -10.5, -9.5);
            Assert.InRange(white.LowPower, 0.9, 1.1);
            Assert.InRange(white.Peak.Power, 1, 1.35);
            Assert.True(white.WorstAnisotropyDb <= -7);
        }
    }

    [Fact]
    public void Dots_of_an_array_have_no_direction()
    {
        foreach (double tone in Dots.Tones)
        {
            DotSpectrum found = Dots.Spectrum(i => Dots.Of(Dots.TenArrays[i], tone), tone);
            // Four times the scatter of a ring of 64 samples lies at −7 dB; white noise stays below it too.
            Assert.InRange(found.MedianAnisotropyDb, -10.7, -9.3);
            Assert.True(found.WorstAnisotropyDb <= -7, Invariant($"{tone}: {found.WorstAnisotropyDb} dB"));
        }
    }

    [Fact]
    public void Dots_of_an_array_lie_as_far_apart_as_they_can_and_have_little_grain()
    {
        foreach (double tone in Dots.Tones)
        {
            DotSpectrum found = Dots.Spectrum(i => Dots.Of(Dots.TenArrays[i], tone), tone);
            Assert.True(found.Peak.Power <= 2);
            if (tone > 0.25)
                continue;
            Assert.InRange(found.Peak.Frequency, 0.85 * found.Principal, 1.25 * found.Principal);
            Assert.True(found.LowPower <= (tone == 0.125 ? 0.06 : 0.11));
        }
    }

    [Theory, InlineData(1 / 32.0, 0.80), InlineData(1 / 8.0, 0.50), InlineData(1 / 4.0, 0.42), InlineData(3 / 8.0, 0.42), InlineData(1 / 2.0, 0.42)]
    public void An_eye_sees_less_of_an_array_than_of_white_noise(double tone, double most)
    {
        double array = Dots.TenArrays.Average(a => Dots.Seen(Dots.Of(a, tone)));
        double white = Enumerable.Range(1, 10).Average(s => Dots.Seen(Dots.White(s, tone)));
        Assert.True(array <= most * white, Invariant($"{array / white}"));
    }

    [Fact]
    public void Ordered_dither_is_refused_for_its_lines()
    {
        // Canary: the checks above must fail for it. At one half it is a chequerboard, whose one line lies beyond all rings.
        foreach (double tone in Dots.Tones.Where(t => t < 0.5))
        {
            DotSpectrum found = Dots.Spectrum(_ => Dots.Bayer(tone), tone);
            Assert.True(found.Peak.Power > 20);
            Assert.True(found.WorstAnisotropyDb > 10);
        }
    }

    [Fact]
    public void Plain_error_diffusion_is_refused_for_its_direction()
    {
        // Canary: no tone passes the bound of −7 dB, nor 0 dB.
        foreach (double tone in Dots.Tones)
            Assert.True(Dots.Spectrum(i => Dots.FloydSteinberg(i + 1, tone), tone).WorstAnisotropyDb > 0);
    }

    [Fact]
    public void Kept_arrays_go_well_together_and_are_as_good_alone()
    {
        foreach (double tone in Dots.Tones)
        {
            double alone = Dots.TenArrays.Average(a => Dots.Seen(Dots.Of(a, tone)));
            double apart = Enumerable.Range(0, 9).Average(i => Dots.SeenPair(Dots.Of(Dots.TenArrays[i], tone), Dots.Of(Dots.TenArrays[i + 1], tone)));
            for (int number = 0; number < ThresholdArrays.Count; number++)
            {
                double[] dots = Dots.Of(ThresholdArrays.Of(number), tone);
                Assert.InRange(Dots.Seen(dots) / alone, 0.97, 1.05);

                // The three darkest are minded by all others.
                for (int dark = 0; dark < Math.Min(number, 3); dark++)
                {
                    double pair = Dots.SeenPair(Dots.Of(ThresholdArrays.Of(dark), tone), dots);
                    Assert.InRange(pair / apart, 0.8, dark == 0 ? 0.985 : 1.01);
                }
            }
        }
    }

    [Fact]
    public void Inks_in_intervals_are_seen_less_together_and_hardly_more_alone()
    {
        ILayerScreen screen = LayerScreens.Of([new("black", 1, null), new("cyan", 0.6, null)], DropLevels.One, ScreenKind.Intervals);
        foreach (double tone in (double[])[1 / 16.0, 1 / 8.0, 1 / 4.0, 3 / 8.0])
        {
            DotRows dots = Dots.Tint(screen, tone, tone);
            double[] first = Dots.Volumes(dots, 0, DropLevels.One), second = Dots.Volumes(dots, 1, DropLevels.One);
            double apart = Enumerable.Range(0, 9).Average(i => Dots.SeenPair(Dots.Of(Dots.TenArrays[i], tone), Dots.Of(Dots.TenArrays[i + 1], tone)));
            double alone = Dots.TenArrays.Average(a => Dots.Seen(Dots.Of(a, tone)));
            Assert.True(Dots.SeenPair(first, second) <= 0.8 * apart);
            Assert.True(Dots.Seen(first) <= 1.05 * alone);
            Assert.True(Dots.Seen(second) <= 1.3 * alone);
        }
    }

    [Theory, InlineData(0.5), InlineData(0.25, 0.5), InlineData(1 / 3.0, 2 / 3.0)]
    public void Texture_neither_vanishes_nor_jumps_at_the_tone_of_a_drop(params double[] inner)
    {
        // Neighbours among 64 tones differ by less than 15 % in what an eye sees: own figure. Toward bare and full the dots must vanish, so
        // these ends are left out.
        DropLevels drops = new([.. inner, 1]);
        ILayerScreen screen = LayerScreens.Of(Screened.One, drops, ScreenKind.Arrays);
        double[] seen = [.. Enumerable.Range(4, 57).Select(t => Dots.Seen(Dots.Volumes(Dots.Tint(screen, t / 64.0), 0, drops)))];
        for (int at = 1; at < seen.Length; at++)
            Assert.InRange(seen[at] / seen[at - 1], 1 / 1.15, 1.15);
    }
}
