using Xunit;
using Laydown.Measures;
using Laydown.Press.Machines;

namespace Laydown.Core.Tests.Press;

/// <summary>A toy machine reckoned by hand: head 100 mm, 2.44 m + 0.6 m across, 6 m/s², board 1.22 m along the feed. Scans and seconds as reckoned, to the last printed digit.</summary>
public sealed class ScanningPublishedTests
{
    [Theory]
    [InlineData(2, 1.2, 27, 79, 135)]
    [InlineData(4, 1.2, 53, 155, 68.9)]
    [InlineData(6, 1.0, 80, 270, 39.7)]
    [InlineData(8, 1.0, 106, 358, 30.0)]
    [InlineData(16, 0.8, 212, 862, 12.4)]
    public void Scans_and_seconds_are_those_of_the_toy_machine(int passes, double speed, int scans, double seconds, double m2PerHour)
    {
        // 1 000 000 rows of 0.0001 mm make the step exact for every pass count, as the hand sum has it.
        Mode mode = Presses.Mode(dpi: 25_400, passes: passes, feedRows: 100_000 / passes, nozzles: 100_000, speed: speed);
        int whole = passes == 6 ? 99_996 : 100_000;
        mode = mode with { NozzlesUsed = whole, FeedRows = whole / passes };
        PressDescription press = Presses.Of([new Channel("K", Laydown.Press.Inks.InkRole.Black, "T", 100_000, 25_400)], mode);
        ScanPlan plan = Scanning.Of(press, mode, 2440, 1220, 1).Value;

        Assert.Equal(scans, plan.Scans);
        Assert.Equal(seconds, plan.Seconds, tolerance: 0.5);
        Assert.Equal(m2PerHour, Throughput.M2PerHour(2.44 * 1.22, plan.Seconds), tolerance: 0.5);
    }

    /// <summary>A board of 4 × 8 ft in 360 s is 320 ft²/h = 29.7 m²/h, as a published demonstration guide reckons it.</summary>
    [Fact]
    public void A_board_of_4_by_8_ft_in_360_s_is_29_7_m2_in_an_hour()
    {
        double m2 = 4 * 8 * 0.3048 * 0.3048;
        Assert.Equal(29.7, Throughput.M2PerHour(m2, 360), tolerance: 0.1);
        Assert.Equal(320, Throughput.M2PerHour(m2, 360) / (0.3048 * 0.3048), tolerance: 0.1);
    }

    /// <summary>41 boards of 4 × 8 ft an hour: common practice, no source.</summary>
    [Fact]
    public void Forty_one_boards_of_4_by_8_ft_are_121_9_m2_in_an_hour_and_87_8_s_each()
    {
        Assert.Equal(121.9, Throughput.M2PerHour(4 * 8 * 0.3048 * 0.3048, 3600.0 / 41), tolerance: 0.1);
        Assert.Equal(87.8, 3600.0 / 41, tolerance: 0.1);
    }
}

public sealed class ScanningLawTests
{
    private static readonly PressDescription Press = Presses.Hybrid(Presses.Mode());

    [Fact]
    public void Counting_scans_one_by_one_gives_the_same_number()
    {
        // Walk the sheet under the head: scan while any part of it is still under or before the swath.
        foreach (double feedMm in new[] { 1.0, 50, 317.3, 1220, 2440 })
        {
            ScanPlan plan = Scanning.Of(Press, Presses.Mode(), 1220, feedMm, 1).Value;
            int scans = 0;
            for (double trailing = feedMm + plan.SwathMm; trailing > 1e-9; trailing -= plan.StepMm)
                scans++;
            Assert.Equal(scans, plan.Scans);
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void Layers_in_one_go_take_at_least_as_many_times_as_long_and_never_much_more(int layers)
    {
        double one = Scanning.Of(Press, Presses.Mode(), 1220, 2440, 1).Value.Seconds;
        double many = Scanning.Of(Press, Presses.Mode(), 1220, 2440, layers).Value.Seconds;
        Assert.InRange(many / one, layers * 0.98, layers * 1.05);
    }

    [Fact]
    public void One_way_adds_the_empty_return()
    {
        double twoWay = Scanning.SecondsPerScan(Press.Carriage, Presses.Mode(), 1220);
        double oneWay = Scanning.SecondsPerScan(Press.Carriage, Presses.Mode(twoWay: false), 1220);
        Assert.Equal((1.82 / 1.5) + (2 * 1.5 / 6), oneWay - twoWay, 9);
    }

    [Fact]
    public void Handling_is_hidden_only_behind_printing_that_lasts()
    {
        PressCosts costs = Presses.Costs(60);
        Assert.Equal(50 - 30, Throughput.UnhiddenSeconds(costs, 100), 9);
        Assert.Equal(50 - 10, Throughput.UnhiddenSeconds(costs, 10), 9);
    }
}
