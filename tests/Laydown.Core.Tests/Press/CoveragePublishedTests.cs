using Xunit;
using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Press.Machines;

namespace Laydown.Core.Tests.Press;

/// <summary>Cases worked out by hand and by another program before this code was written: (J, S, F) and the visits of a row, fewest and most.</summary>
public sealed class CoveragePublishedTests
{
    [Theory]
    [InlineData(7, 4, 7, 1, 1)]
    [InlineData(11, 4, 11, 1, 1)]
    [InlineData(179, 4, 179, 1, 1)]
    [InlineData(12, 4, 3, 4, 4)]
    [InlineData(30, 4, 15, 2, 2)]
    [InlineData(28, 4, 7, 4, 4)]
    [InlineData(15, 4, 5, 3, 3)]
    [InlineData(8, 4, 8, 0, 4)]
    [InlineData(180, 4, 180, 0, 4)]
    [InlineData(16, 4, 4, 0, 16)]
    [InlineData(8, 4, 6, 0, 3)]
    [InlineData(7, 4, 5, 1, 2)]
    public void Every_listed_walk_meets_its_rows_as_often_as_listed(int nozzles, int rows, int feed, int fewest, int most)
    {
        RowVisits seen = Coverage.Simulate(nozzles, rows, feed, Math.Max(1, nozzles / feed));

        Assert.Equal((fewest, most), (seen.Fewest, seen.Most));
        Assert.Equal(fewest == most, Coverage.Holds(nozzles, rows, feed, Math.Max(1, nozzles / feed)));
    }
}

public sealed class CoverageLawTests
{
    [Fact]
    public void The_invariant_and_the_simulation_agree_on_every_small_walk()
    {
        for (int nozzles = 1; nozzles <= 24; nozzles++)
            for (int rows = 1; rows <= 8; rows++)
                for (int feed = 1; feed <= 24; feed++)
                    for (int passes = 1; passes <= 6; passes++)
                        Assert.Equal(Coverage.Holds(nozzles, rows, feed, passes), Coverage.Simulate(nozzles, rows, feed, passes).FirstWrongRow is null);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    public void A_split_head_still_covers_every_row_with_at_most_its_nozzles(int layers)
    {
        Mode mode = Presses.Mode(passes: 4, feedRows: 179);
        CoveragePlan block = Coverage.Split(mode, Presses.Head(), layers).Value;

        Assert.True(Coverage.Holds(block.Nozzles, block.RowsBetweenNozzles, block.FeedRows, block.Passes));
        Assert.InRange(block.Nozzles * layers, 1, mode.NozzlesUsed);
    }
}

public sealed class CoverageRefusalTests
{
    [Fact]
    public void A_feed_that_misses_a_row_is_refused_with_that_row()
    {
        InputFault fault = Assert.Single(Coverage.Check(Presses.Mode(passes: 1, feedRows: 180), Presses.Head()).Faults);

        // Nozzles stand on multiples of 4 and so does every feed: from the last nozzle's row on, the second row is the first one missed.
        Assert.Contains("row 2 of every 180 is missed", fault.Found, StringComparison.Ordinal);
        Assert.Contains("0 to 4 times", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_feed_that_meets_a_row_too_often_is_refused_with_that_row()
    {
        InputFault fault = Assert.Single(Coverage.Check(Presses.Mode(passes: 1, feedRows: 5, nozzles: 7), Presses.Head()).Faults);
        Assert.Matches("row \\d of every 5 is met 2 times", fault.Found);
    }

    [Fact]
    public void More_nozzles_than_the_head_has_are_refused() =>
        Assert.Contains("1000 nozzles", Assert.Single(Coverage.Check(Presses.Mode(nozzles: 1432, feedRows: 179, passes: 8), Presses.Head()).Faults).Wanted, StringComparison.Ordinal);

    [Fact]
    public void A_resolution_between_the_nozzles_is_refused() =>
        Assert.Contains("whole multiple", Assert.Single(Coverage.Check(Presses.Mode(dpi: 600), Presses.Head()).Faults).Wanted, StringComparison.Ordinal);

    [Fact]
    public void Too_many_layers_for_the_nozzles_are_refused() =>
        Assert.False(Coverage.Split(Presses.Mode(passes: 8, feedRows: 3), Presses.Head(), 5).IsTaken);

    [Fact]
    public void A_carriage_faster_than_the_nozzles_fire_is_refused()
    {
        // 20 kHz at 720 dpi is 0.7056 m/s for one scan over all columns, 1.411 m/s when two scans share them.
        PressDescription press = Presses.Hybrid();
        Assert.Equal(1.411, Firing.Check(Presses.Mode(passes: 2, speed: 1.4), press.Carriage).Value.Value, 3);
        Assert.False(Firing.Check(Presses.Mode(passes: 2, speed: 1.42), press.Carriage).IsTaken);
    }

    [Fact]
    public void A_sound_press_has_no_fault_and_a_mode_that_skips_rows_names_its_place()
    {
        Assert.Empty(PressCheck.Of(Presses.Hybrid(Presses.Mode()), "press.json"));
        InputFault fault = Assert.Single(PressCheck.Of(Presses.Hybrid(Presses.Mode(), Presses.Mode("bad", feedRows: 178)), "press.json"));
        Assert.StartsWith("/modes/1/feedRows", fault.Field, StringComparison.Ordinal);
    }

    [Fact]
    public void A_channel_without_tank_and_zones_that_overlap_are_named()
    {
        PressDescription press = Presses.Hybrid(Presses.Mode()) with { Tanks = [], Zones = [new("A", 0, 1000), new("B", 900, 100)] };
        IReadOnlyList<InputFault> faults = PressCheck.Of(press, "press.json");
        Assert.Contains(faults, f => f.Field == "/channels/0/tankId");
        Assert.Contains(faults, f => f.Field == "/zones/1");
    }

    [Fact]
    public void White_of_another_head_is_checked_too()
    {
        PressDescription press = Presses.Of([Presses.Head(), Presses.Head(nozzles: 500, role: InkRole.White)], Presses.Mode());
        Assert.Contains("500 nozzles of channel White", Assert.Single(PressCheck.Of(press, "press.json")).Wanted, StringComparison.Ordinal);
    }
}
