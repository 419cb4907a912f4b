using Laydown.Raster.Separation;

namespace Laydown.Core.Tests.Raster.Separation;

/// <summary>The choice of a link's grid by what it misses.</summary>
public sealed class LinkGridLawTests
{
    private static readonly string[] Names = ["One", "Two"];

    /// <summary>Half a code of 65535 for nodes, one for rounding down, places as the link has them: less than a fiftieth of a code of 255.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    public void A_way_that_is_straight_needs_the_smallest_grid_and_no_curve(int channels)
    {
        LinkGrid grid = Chosen(channels, (from, to) => (to[0], to[1]) = (from[0] / 2, (from[1] + from[2]) / 3), [3, 5], [1.4, 1], 0.02, 0.05);
        Assert.True(grid.MeetsWish);
        Assert.Equal((3, 1.0), (grid.Table.Steps, grid.Bend));
        Assert.InRange(grid.MaxError, 0, 0.05);
    }

    [Fact]
    public void A_steep_start_is_met_by_a_curve_on_a_smaller_grid()
    {
        static void Steep(ReadOnlySpan<double> from, Span<double> to) => (to[0], to[1]) = (Math.Sqrt(from[0]), Math.Sqrt(from[2]));
        LinkGrid straight = Chosen(3, Steep, [9, 17, 33], [1], 0.5, 3), bent = Chosen(3, Steep, [9, 17, 33], [1, 2], 0.5, 3);
        Assert.False(straight.MeetsWish);
        Assert.Equal((33, 9), (straight.Table.Steps, bent.Table.Steps));
        Assert.Equal(2, bent.Bend);
        Assert.InRange(bent.MaxError, 0, 3);
    }

    [Fact]
    public void What_is_told_is_what_a_knee_inside_a_cell_misses()
    {
        // Between nodes 1/8 apart a knee in the middle of a cell is missed by slope × cell / 4, and nowhere by more.
        LinkGrid grid = Chosen(3, (from, to) => (to[0], to[1]) = (Math.Max(0, from[0] - (9 / 16.0)), 0), [9], [1], 0.01, 0.01);
        Assert.False(grid.MeetsWish);
        Assert.Equal(255.0 / 32, grid.MaxError, 0.05);

        // Its square falls from the peak to both sides over one cell of eight: peak² / 3 / 8, for one ink of two.
        Assert.Equal(255.0 / 32 / Math.Sqrt(48), grid.RmsError, 0.03);
    }

    [Fact]
    public void Nothing_to_try_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Chosen(3, (_, _) => { }, [], [1], 1, 1));
        Assert.Throws<ArgumentException>(() => Chosen(3, (_, _) => { }, [9], [], 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Chosen(5, (_, _) => { }, [9], [1], 1, 1));
    }

    private static LinkGrid Chosen(int channels, ExactInks one, int[] sizes, double[] bends, double rms, double most) => LinkGrid.Smallest(
        channels, Names,
        (from, to) =>
        {
            for (int pixel = 0; pixel < from.Length / channels; pixel++)
                one(from.Slice(pixel * channels, channels), to.Slice(pixel * 2, 2));
        },
        new(sizes, bends, rms, most, 50_000), TestContext.Current.CancellationToken);
}
