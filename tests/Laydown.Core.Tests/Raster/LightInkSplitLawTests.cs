using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster;

/// <summary>The laws of sharing a demand between light and dark ink, for every demand of 16 bits.</summary>
public sealed class LightInkSplitLawTests
{
    public static TheoryData<double, double, double> Splits => new()
    {
        { 0.3, 20, 80 }, { 0.25, 15, 100 }, { 0.35, 90, 70 }, { 0.3, 30, 100 }, { 0.5, 25, 60 }, { 0.95, 95, 100 }, { 0.05, 1, 50 }, { 0.05, 50, 100 },
    };

    [Theory, MemberData(nameof(Splits))]
    public void Light_and_dark_hold_the_demand(double strength, double takeOver, double limit)
    {
        LightInkSplit split = new(strength, takeOver, limit);
        for (int d = 0; d <= Tile.Full; d++)
        {
            // Light is rounded down, so what both hold lies at most one code of light below the demand, never above.
            double missing = d - ((strength * split.Light[d]) + split.Dark[d]);
            Assert.InRange(missing, -1e-6, strength + 1e-6);
        }
    }

    [Theory, MemberData(nameof(Splits))]
    public void Dark_never_falls_light_has_one_top_and_both_move_in_small_steps(double strength, double takeOver, double limit)
    {
        LightInkSplit split = new(strength, takeOver, limit);
        double slope = 1 / (1 - (split.TakeOverPercent / 100));
        double most = Math.Max(Math.Ceiling(1 / strength), Math.Ceiling((Math.Ceiling(slope) - 1) / strength)) + 1;
        bool falling = false;
        for (int d = 1; d <= Tile.Full; d++)
        {
            int dark = split.Dark[d] - split.Dark[d - 1];
            int light = split.Light[d] - split.Light[d - 1];
            Assert.InRange(dark, 0, Math.Ceiling(slope) + 1);
            Assert.InRange(light, -most, most);
            falling |= light < 0;
            Assert.False(falling && light > 0, Invariant($"light rises again at {d}"));
        }
    }

    [Theory, MemberData(nameof(Splits))]
    public void Each_limit_holds_and_the_ends_are_pure(double strength, double takeOver, double limit)
    {
        LightInkSplit split = new(strength, takeOver, limit);
        Assert.Equal((0, 0), (split.Light[0], split.Dark[0]));
        Assert.Equal((0, Tile.Full), (split.Light[Tile.Full], split.Dark[Tile.Full]));
        for (int d = 0; d <= Tile.Full; d++)
        {
            Assert.True(split.Light[d] <= limit / 100 * Tile.Full);
            Assert.True(split.Light[d] + split.Dark[d] <= Tile.Full);
        }
    }

    [Theory, MemberData(nameof(Splits))]
    public void No_dark_dot_stands_in_the_lights_and_dark_starts_without_a_step_in_slope(double strength, double takeOver, double limit)
    {
        LightInkSplit split = new(strength, takeOver, limit);
        int start = (int)(split.TakeOverPercent * 0.75 / 100 * Tile.Full) - 1;
        for (int d = 0; d <= start; d++)
            Assert.Equal(0, split.Dark[d]);

        // The knee is half the take-over tone wide; a parabola has done a twentieth of its end slope's rise after a tenth of it.
        int way = (int)(split.TakeOverPercent / 2 / 100 * Tile.Full / 10);
        Assert.True(split.Dark[start + way] <= 2 + (way * 0.06 / (1 - (split.TakeOverPercent / 100))));
    }
}
