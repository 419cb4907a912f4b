using Laydown.Measures;
using Laydown.Plan.Log;
using Xunit;

namespace Laydown.Core.Tests.Log;

/// <summary>What the log does not take, each named by field, found and wanted.</summary>
public sealed class LogRefusalTests
{
    private static readonly LogEntry Start = LogSamples.Entry(1, 0, LogKind.Start);

    [Fact]
    public void An_actual_without_a_run_is_refused() =>
        Assert.Equal("log, /runId: found no run 'R-1'; wanted the id of a run of this shop.", Assert.Single(Faults(Stop(1, 0), null, Start)).ToString());

    [Fact]
    public void Negative_waste_is_refused() => Refused("/stop/spoiled", "-1 sheets", Faults(Stop(3, -1), LogSamples.Run, Start));

    [Fact]
    public void Counts_that_no_press_prints_in_one_go_are_refused()
    {
        Refused("/stop/good", "2147483647 sheets", Faults(Stop(int.MaxValue, 1), LogSamples.Run, Start));
        Refused("/stop/spoiled", "1000001 sheets", Faults(Stop(1, 1_000_001), LogSamples.Run, Start));
        Assert.Empty(Faults(Stop(1_000_000, 1_000_000), LogSamples.Run, Start));
        LogEntry remake = LogSamples.Entry(0, 5, LogKind.Remake) with { Remake = new(RemakeCause.Dust, RemakeFound.Press, null, int.MaxValue, 0, 0, 0, RemakePayer.Shop, new(long.MaxValue), "") };
        Refused("/remake/pieces", "2147483647", Faults(remake, LogSamples.Run));
        Refused("/remake/cost", "at most 100000000.00", Faults(remake, LogSamples.Run));
    }

    [Fact]
    public void A_remake_of_an_item_that_is_not_on_the_run_is_refused_with_those_that_are()
    {
        LoggedRun run = LogSamples.Run with { ItemIds = ["A-1", "A-2"] };
        LogEntry remake = LogSamples.Entry(0, 5, LogKind.Remake) with { Remake = new(RemakeCause.Dust, RemakeFound.Press, "B-1", 1, 0, 0, 0, RemakePayer.Shop, default, "") };
        Refused("/remake/itemId", "'B-1'; wanted an item of run R-1: A-1, A-2", Faults(remake, run));
        Assert.Empty(Faults(remake with { Remake = remake.Remake! with { ItemId = "A-2" } }, run));
        Assert.Empty(Faults(remake with { Remake = remake.Remake! with { ItemId = null } }, run));
    }

    [Fact]
    public void What_another_kind_of_entry_tells_is_refused_and_not_kept_unlooked_at()
    {
        Refused("/stop", "told by an entry of kind Start", Faults(Start with { Stop = new(-5, 0, null, Done: true) }, LogSamples.Run));
        LogEntry note = LogSamples.Entry(0, 5, LogKind.Note) with { Note = "words" };
        Refused("/stop", "kind Note", Faults(note with { Stop = new(1, 0, null, Done: true) }, LogSamples.Run));
        Refused("/ink", "kind Note", Faults(note with { Ink = new("k", 1) }, LogSamples.Run));
        Refused("/strikes", "kind Note", Faults(note with { Strikes = 1 }, LogSamples.Run));
        Assert.Empty(Faults(note, LogSamples.Run));
    }

    [Fact]
    public void An_end_before_its_start_is_refused() =>
        Refused("/at", "not after the start", Faults(Stop(3, 0) with { At = LogSamples.At(-5) }, LogSamples.Run, Start));

    [Fact]
    public void Good_and_spoiled_that_differ_from_what_was_made_are_refused() =>
        Refused("/stop/made", "9 sheets made, 7 good + 1 spoiled", Faults(Stop(7, 1, 9), LogSamples.Run, Start));

    [Fact]
    public void A_tank_reading_above_the_capacity_below_empty_or_of_no_tank_is_refused()
    {
        LogEntry ink = LogSamples.Entry(0, 5, LogKind.Ink);
        Refused("/ink/levelMl", "2001 ml", Faults(ink with { Ink = new("k", 2001), RunId = null }, null));
        Refused("/ink/levelMl", "-1 ml", Faults(ink with { Ink = new("k", -1) }, LogSamples.Run));
        Refused("/ink/levelMl", "NaN ml", Faults(ink with { Ink = new("k", double.NaN) }, LogSamples.Run));
        Refused("/ink/tankId", "'z'", Faults(ink with { Ink = new("z", 1) }, LogSamples.Run));
        Assert.Empty(Faults(ink with { Ink = new("k", 2000), RunId = null }, null));
    }

    [Fact]
    public void Starting_twice_starting_what_is_done_and_stopping_what_stands_are_refused()
    {
        Refused("/kind", "is running since", Faults(Start with { Number = 0, At = LogSamples.At(9) }, LogSamples.Run, Start));
        Refused("/kind", "was done", Faults(Start with { Number = 0, At = LogSamples.At(90) }, LogSamples.Run, [.. LogSamples.TwoTurns]));
        Refused("/kind", "is not running", Faults(Stop(1, 0), LogSamples.Run));
        Refused("/at", "before the last stop", Faults(Start with { Number = 0, At = LogSamples.At(20) }, LogSamples.Run, [.. LogSamples.TwoTurns.Take(2)]));
    }

    [Fact]
    public void A_second_run_on_a_press_that_runs_is_refused()
    {
        RunTurn other = new("R-2", "press", LogSamples.At(0), null, 1);
        IReadOnlyList<InputFault> faults = LogFaults.Of(Start, LogSamples.Run, LogSamples.Tanks, new([], [other]), LogSamples.At(100));
        Refused("/runId", "run R-2 is running on press", faults);
    }

    [Fact]
    public void A_start_within_another_run_of_the_press_is_refused_with_its_entries_and_a_way_to_mend_it()
    {
        RunTurn other = new("R-2", "press", LogSamples.At(10), LogSamples.At(40), 7, 8);
        Refused("/at", "found start 2026-11-26 09:10 while run R-2 was on press from 2026-11-26 09:10 to 09:40 (entries 7 and 8); "
            + "wanted a start from 09:40 on; where the times of R-2 are wrong, entry 8 struck, then 7, and both told again", FaultsOver(Start with { At = LogSamples.At(10) }, other));
        Refused("/at", "start 2026-11-26 09:39", FaultsOver(Start with { At = LogSamples.At(39) }, other));
        Assert.Empty(FaultsOver(Start with { At = LogSamples.At(40) }, other));
        Assert.Empty(FaultsOver(Start with { At = LogSamples.At(9) }, other));
    }

    [Fact]
    public void A_stop_that_lays_its_run_over_another_of_the_press_is_refused_and_one_that_touches_it_is_not()
    {
        RunTurn other = new("R-2", "press", LogSamples.At(30), LogSamples.At(40), 7, 8);
        foreach (double end in new[] { 31, 40, 60 })
            Refused("/at", "while run R-2 was on press from 2026-11-26 09:30 to 09:40 (entries 7 and 8); wanted an end by 2026-11-26 09:30", FaultsOver(Stop(3, 0) with { At = LogSamples.At(end) }, other, Start));
        Assert.Empty(FaultsOver(Stop(3, 0) with { At = LogSamples.At(30) }, other, Start));
        Assert.Empty(FaultsOver(Stop(3, 0), other with { Start = LogSamples.At(-20), Stop = LogSamples.At(0) }, Start));

        // In an old log the other may have begun before: then the start is what is wrong.
        Refused("/at", "wanted entry 1, which started this run, struck and told again", FaultsOver(Stop(3, 0), other with { Start = LogSamples.At(-20) }, Start));
    }

    [Fact]
    public void Thickness_wants_five_points_the_press_takes()
    {
        LogEntry entry = LogSamples.Entry(0, 5, LogKind.Thickness);
        Refused("/thickness/pointsMm", "4 points", Faults(entry with { Thickness = new([3, 3, 3, 3]) }, LogSamples.Run));
        Refused("/thickness/pointsMm/4", "41 mm", Faults(entry with { Thickness = new([3, 3, 3, 3, 41]) }, LogSamples.Run));
        Assert.Empty(Faults(entry with { Thickness = new([3, 3.1, 3, 2.9, 3]) }, LogSamples.Run));
    }

    [Fact]
    public void A_time_to_come_a_negative_remake_and_a_note_without_words_are_refused()
    {
        Refused("/at", "not after now", Faults(Start with { At = LogSamples.At(500) }, LogSamples.Run));
        RemakeNote remake = new(RemakeCause.Dust, RemakeFound.Press, null, 1, -2, 0, 0, RemakePayer.Shop, default, "");
        Refused("/remake/areaM2", "-2 m²", Faults(LogSamples.Entry(0, 5, LogKind.Remake) with { Remake = remake }, LogSamples.Run));
        Refused("/note", "no words", Faults(LogSamples.Entry(0, 5, LogKind.Note), LogSamples.Run));
        Refused("/colour/deltaE", "-1", Faults(LogSamples.Entry(0, 5, LogKind.Colour) with { Colour = new("grey", -1) }, LogSamples.Run));
        Refused("/register/acrossMm", "NaN mm", Faults(LogSamples.Entry(0, 5, LogKind.Register) with { Register = new(double.NaN, 0) }, LogSamples.Run));
    }

    [Fact]
    public void Only_the_last_start_or_stop_is_struck_and_only_with_words()
    {
        LogEntry strike = LogSamples.Entry(0, 80, LogKind.Strike) with { Strikes = 2, Note = "counted wrong" };
        Refused("/strikes", "no entry 2", Of(strike, null));
        Refused("/strikes", "not the last start or stop", Of(strike, LogSamples.TwoTurns[1]));
        Refused("/note", "no words", Of(strike with { Strikes = 4, Note = " " }, LogSamples.TwoTurns[3]));
        Assert.Empty(Of(strike with { Strikes = 4 }, LogSamples.TwoTurns[3]));

        static IReadOnlyList<InputFault> Of(LogEntry entry, LogEntry? struck) =>
            LogFaults.Of(entry, LogSamples.Run, LogSamples.Tanks, new(LogSamples.TwoTurns, [], struck), LogSamples.At(100));
    }

    private static LogEntry Stop(int good, int spoiled, int? made = null) =>
        LogSamples.Entry(0, 30, LogKind.Stop) with { Stop = new(good, spoiled, made, Done: true) };

    private static IReadOnlyList<InputFault> Faults(LogEntry entry, LoggedRun? run, params LogEntry[] before) =>
        LogFaults.Of(entry, run, LogSamples.Tanks, new(before, []), LogSamples.At(100));

    private static IReadOnlyList<InputFault> FaultsOver(LogEntry entry, RunTurn other, params IReadOnlyList<LogEntry> before) =>
        LogFaults.Of(entry, LogSamples.Run, LogSamples.Tanks, new(before, [other]), LogSamples.At(100));

    private static void Refused(string field, string words, IReadOnlyList<InputFault> faults) =>
        Assert.Contains(faults, f => f.Field == field && f.ToString().Contains(words, StringComparison.Ordinal) && f.Wanted.Length > 0);
}
