using Laydown.Colour.Calibration;
using Laydown.Colour.Inks;
using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Colour.Calibration;

/// <summary>The designed split keeps every law for every demand, after rounding too, and is quieter than the others.</summary>
public sealed class LightSplitDesignLawTests
{
    private static readonly DotGrain Magenta = new(94, 72, 47);

    public static TheoryData<double, double, double> Cases => new()
    {
        { 0.3, 80, 100 }, { 0.25, 100, 100 }, { 0.35, 70, 120 }, { 0.3, 77.7, 133.3 }, { 0.5, 60, 101 }, { 0.95, 100, 200 }, { 0.05, 50,
            100 },
    };

    [Theory, MemberData(nameof(Cases))]
    public void Limits_hold_for_every_demand_in_16_bits_and_after_rounding_to_8(double strength, double lightLimit, double pairLimit)
    {
        LightInkSplit split = Split(strength, lightLimit, pairLimit);
        for (int d = 0; d <= Tile.Full; d++)
        {
            int light = split.Light[d], dark = split.Dark[d];
            Assert.True(light <= lightLimit / 100 * Tile.Full && light + dark <= pairLimit / 100 * Tile.Full, Invariant($"16 bits at {d}"));
            int light8 = (light + 128) / 257, dark8 = (dark + 128) / 257;
            Assert.True(light8 <= (lightLimit * 2.55) + 1e-9 && light8 + dark8 <= (pairLimit * 2.55) + 1e-9, Invariant($"8 bits at {d}"));
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void The_demand_is_kept_and_dark_never_falls_nor_jumps(double strength, double lightLimit, double pairLimit)
    {
        LightInkSplit split = Split(strength, lightLimit, pairLimit);
        Assert.Equal((0, 0, 0, (int)Tile.Full), (split.Light[0], split.Dark[0], split.Light[Tile.Full], split.Dark[Tile.Full]));
        for (int d = 1; d <= Tile.Full; d++)
        {
            Assert.InRange(d - ((strength * split.Light[d]) + split.Dark[d]), -1e-6, strength + 1e-6);
            Assert.InRange(split.Dark[d] - split.Dark[d - 1], 0, LightSplitDesign.Steepest + 1);
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void The_dark_curve_bends_little(double strength, double lightLimit, double pairLimit)
    {
        IReadOnlyList<double> dark = LightSplitDesign.Make(strength, Magenta, lightLimit, pairLimit).DarkPercent;

        // Two means over 17 values leave a change of slope of at most 3 × 0.5 % / 17 from one value to the next; the ends have narrower
        // windows.
        for (int i = 9; i < dark.Count - 9; i++)
            Assert.InRange(dark[i - 1] - (2 * dark[i]) + dark[i + 1], -0.1, 0.1);
    }

    [Theory]
    [InlineData(0.3, 80, 100), InlineData(0.25, 100, 100), InlineData(0.35, 70, 100), InlineData(0.35, 80, 130)]
    public void It_is_quieter_than_the_dark_ink_alone_and_than_the_split_by_a_take_over_tone(double strength, double lightLimit,
        double pairLimit)
    {
        LightSplit made = LightSplitDesign.Make(strength, Magenta, lightLimit, pairLimit);
        double usual = Grain(new LightInkSplit(strength, 25, lightLimit), strength);
        double designed = Grain(new LightInkSplit(strength, made.DarkPercent), strength);
        Assert.Equal(designed, made.Graininess.Value, made.Graininess.Value * 0.02);
        TestContext.Current.TestOutputHelper?.WriteLine(
            Invariant($"s {strength}: designed {designed:0.0}, take-over 25 % {usual:0.0}, dark alone {made.StraightGraininess.Value:0.0}"));
        Assert.True(designed < usual && designed < 0.8 * made.StraightGraininess.Value);
    }

    [Fact]
    public void Strength_is_found_from_two_wedges_of_the_same_colourant()
    {
        Wedge dark = Ramp("Magenta", 1), light = Ramp("Light magenta", 0.3);
        (double strength, double residual) = LightSplitDesign.StrengthOf(light, dark);
        Assert.Equal(0.3, strength, 0.003);
        Assert.InRange(residual, 0, 0.1);
        Assert.False(LightSplitDesign.Make(dark, light, 80, 100, "swapped").IsTaken);
        Assert.True(LightSplitDesign.Make(light, dark, 80, 100, "right").IsTaken);
        Assert.False(LightSplitDesign.Make(light, dark, double.NaN, 100, "limit").IsTaken);
        Assert.False(LightSplitDesign.Make(light, dark, 80, 90, "limit").IsTaken);
    }

    [Fact]
    public void A_free_curve_that_breaks_a_law_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new LightInkSplit(0.3, [0, 60, 100]));
        Assert.Throws<ArgumentException>(() => new LightInkSplit(0.3, [0, 10, 100]));
        Assert.Throws<ArgumentException>(() => new LightInkSplit(0.3, [0, 40, 30, 100]));
        Assert.Throws<ArgumentException>(() => new LightInkSplit(0.3, [0, double.NaN, 100]));
    }

    private static LightInkSplit Split(double strength, double lightLimit, double pairLimit) =>
        new(strength, LightSplitDesign.Make(strength, Magenta, lightLimit, pairLimit).DarkPercent);

    private static double Grain(LightInkSplit split, double strength) => Magenta.Mean(strength,
        [.. Enumerable.Range(0, 201).Select(i => split.Dark[i * Tile.Full / 200] / (double)Tile.Full)]);

    // Beer's law: an ink layer of the same colourant, thinner.
    private static Wedge Ramp(string name, double strength)
    {
        SpectralWeights weights = SpectralWeights.For(Illuminant.D50);
        double[] density = GenericUvInks.Density(ProcessInk.Magenta);
        return new(name, [.. Enumerable.Range(0, 21).Select(s => new WedgeStep(s / 20.0, Lab.From(
            weights.Of([.. density.Select(d => 0.85 * Math.Pow(10, -2 * d * strength * s / 20.0))]), ReadingColour.White), 1))], []);
    }
}
