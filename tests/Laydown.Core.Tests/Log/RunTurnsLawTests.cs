using Laydown.Measures;
using Laydown.Plan.Calendar;
using Laydown.Plan.Log;
using Xunit;

namespace Laydown.Core.Tests.Log;

/// <summary>A press prints one run at a time: what the log tells twice is counted once, and told.</summary>
public sealed class RunTurnsLawTests
{
    [Fact]
    public void Starts_and_stops_of_a_run_are_turns_and_what_stands_open_is_one_without_an_end()
    {
        IReadOnlyList<RunTurn> turns = RunTurns.Of([.. LogSamples.TwoTurns, LogSamples.Entry(5, 71, LogKind.Note), LogSamples.Entry(6, 80, LogKind.Start) with { RunId = "R-2" }]);
        Assert.Equal([Turn("R-1", 0, 30, 1, 2), Turn("R-1", 50, 70, 3, 4), new RunTurn("R-2", "press", LogSamples.At(80), null, 6)], turns);
    }

    [Fact]
    public void Two_runs_at_once_are_told_with_the_time_they_share()
    {
        IReadOnlyList<RunOverlap> overlaps = RunTurns.Overlaps(
            [Turn("R-1", 0, 60), Turn("R-2", 50, 90), Turn("R-3", 10, 20), Turn("R-4", 90, 95), Turn("R-1", 60, 70), Turn("R-5", 0, 95) with { PressId = "other" }]);
        Assert.Equal(
            [("R-1", "R-3", 10.0), ("R-1", "R-2", 10.0), ("R-2", "R-1", 10.0)], overlaps.Select(o => (o.RunId, o.OtherRunId, o.Minutes)));
        Assert.Equal((LogSamples.At(50), LogSamples.At(60)), (overlaps[1].From, overlaps[1].To));
    }

    /// <summary>Reckoned minute by minute, each by itself.</summary>
    [Fact]
    public void Hours_are_what_counting_minute_by_minute_gives_and_never_pass_the_open_time()
    {
        Random chance = new(7);
        for (int trial = 0; trial < 200; trial++)
        {
            List<RunTurn> turns = [.. Enumerable.Range(0, 8).Select(i => (At: chance.Next(0, 90), Long: chance.Next(1, 40)))
                .Select(t => Turn("R", t.At, t.At + t.Long))];
            List<OpenSpan> open = [.. Enumerable.Range(0, 3).Select(i => new OpenSpan(LogSamples.At((40 * i) + chance.Next(0, 10)), LogSamples.At((40 * i) + chance.Next(11, 40)), 1))];
            PressHours hours = RunTurns.Hours(turns, open, LogSamples.At(5), LogSamples.At(100));
            List<int> minutes = [.. Enumerable.Range(5, 95)];
            Assert.Equal(
                new PressHours(minutes.Count(Open), minutes.Count(m => Open(m) && On(m) > 0), minutes.Count(m => !Open(m) && On(m) > 0), minutes.Sum(m => Math.Max(0, On(m) - 1))), hours);
            Assert.InRange(hours.RunMinutes, 0, hours.OpenMinutes);

            bool Open(int minute) => open.Exists(o => o.Start <= LogSamples.At(minute) && LogSamples.At(minute) < o.End);

            int On(int minute) => turns.Count(t => t.Start <= LogSamples.At(minute) && LogSamples.At(minute) < t.Stop);
        }
    }

    [Fact]
    public void Availability_counts_a_minute_told_twice_once_and_says_so()
    {
        RunActual actual = RunActuals.Of(LogSamples.Run, LogSamples.TwoTurns);
        PressHours hours = PressHours.Sum([new(60, 60, 10, 30), new(40, 20)]);
        Figure availability = ShopFigures.Of([actual, actual], [], hours).Single(f => f.Name == "availability");
        Assert.Equal(80, availability.Value);
        Assert.Equal("80 min run of 100 min open; 10 min run while shut are left out; 30 min that two runs tell of one press are counted once", availability.Because);
    }

    private static RunTurn Turn(string run, double from, double to, long start = 0, long stop = 0) => new(run, "press", LogSamples.At(from), LogSamples.At(to), start, stop);
}
