using Laydown.Measures;
using Laydown.Plan.Upkeep;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Xunit;

namespace Laydown.Core.Tests.Upkeep;

public sealed class UpkeepRefusalTests
{
    private static readonly UpkeepRequest Sound = Cares.Request(Cares.Press(null, new CareRule("n", CareKind.NozzleCheck, "pattern", 4, "operator", EveryDays: 1)), Cares.At(1, 6), Cares.At(5, 18), Cares.Use("R-1", Cares.At(1, 8), 2, 50));

    [Fact]
    public void A_sound_request_is_taken() => Assert.Empty(UpkeepPlanner.Plan(Sound).Faults);

    [Fact]
    public void A_reading_above_the_capacity_is_refused() =>
        Refused(Sound with { State = Sound.State with { Tanks = [new("T-Cyan", 2000.1)] } }, "/state/tanks/0/levelMl", "2000.1 ml in T-Cyan", "0 to the capacity, 2000 ml");

    [Theory]
    [InlineData(-0.1, "-0.1 ml in T-Cyan")]
    [InlineData(double.NaN, "NaN ml in T-Cyan")]
    public void A_reading_under_nothing_is_refused(double ml, string found) =>
        Refused(Sound with { State = Sound.State with { Tanks = [new("T-Cyan", ml)] } }, "/state/tanks/0/levelMl", found, "0 to the capacity, 2000 ml");

    [Fact]
    public void A_press_without_a_mode_is_refused() => Refused(Sound with { Press = Sound.Press with { Modes = [] } }, "/press/modes", "no mode", "at least one print mode");

    [Fact]
    public void A_reading_of_a_day_to_come_is_refused() =>
        Refused(Sound with { State = Sound.State with { At = Cares.At(2, 6) } }, "/state/at", "2026-06-02T06:00:00.0000000+02:00, which is still to come", "not after 2026-06-01T06:00:00.0000000+02:00");

    [Fact]
    public void A_plan_that_ends_before_it_begins_is_refused() =>
        Refused(Sound with { To = Cares.At(1, 5) }, "/to", "2026-06-01T05:00:00.0000000+02:00", "after 2026-06-01T06:00:00.0000000+02:00, at most 370 days");

    [Fact]
    public void Care_done_after_the_reading_is_refused() =>
        Refused(Sound with { State = Sound.State with { Counters = [new("n", Cares.At(1, 7))] } }, "/state/counters/0/lastDone", "2026-06-01T07:00:00.0000000+02:00", "not after the reading, 2026-06-01T06:00:00.0000000+02:00");

    [Fact]
    public void Runs_that_overlap_are_refused() =>
        Assert.Equal("/uses/1", Assert.Single(UpkeepPlanner.Plan(Sound with { Uses = [.. Sound.Uses, Cares.Use("R-2", Cares.At(1, 9), 1)] }).Faults).Field);

    [Fact]
    public void A_run_that_ends_before_it_starts_is_refused() =>
        Assert.Equal("/uses/0/end", Assert.Single(UpkeepPlanner.Plan(Sound with { Uses = [Cares.Use("R-2", Cares.At(1, 9), -1)] }).Faults).Field);

    [Fact]
    public void Negative_ink_is_refused_in_runs_and_on_the_shelf()
    {
        Refused(Sound with { Uses = [Cares.Use("R-2", Cares.At(1, 9), 1, -5)] }, "/uses/0/inks/0", "0 ml and -5 ml", "at least 0 ml each");
        Refused(Sound with { Packs = [new("L", InkRole.Cyan, -1)] }, "/packs/0/ml", "-1 ml", "0 ml to 1000000 ml");
    }

    [Fact]
    public void A_tank_or_rule_the_press_does_not_have_is_refused()
    {
        Assert.Equal("/state/tanks/0/tankId", Assert.Single(UpkeepPlanner.Plan(Sound with { State = Sound.State with { Tanks = [new("T-Gold", 1)] } }).Faults).Field);
        Assert.Equal("/state/counters/0/ruleId", Assert.Single(UpkeepPlanner.Plan(Sound with { State = Sound.State with { Counters = [new("x", Cares.At(1, 6))] } }).Faults).Field);
    }

    [Fact]
    public void A_care_rule_without_an_interval_or_with_one_of_nothing_is_refused()
    {
        Refused(Sound with { Press = Cares.Press(null, new CareRule("a", CareKind.Other, "a", 1, "x")) }, "/press/care/rules/0", "no interval", "everyHours, everyPrintHours, everyMl or everyDays");
        Refused(Sound with { Press = Cares.Press(null, new CareRule("a", CareKind.Other, "a", 1, "x", EveryMl: 0)) }, "/press/care/rules/0/everyMl", "0", "over 0");
        Refused(Sound with { Press = Cares.Press(new LongStopRules(LimitHours: -60)) }, "/press/care/longStop/limitHours", "-60", "over 0");
    }

    [Fact]
    public void Faults_of_the_calendar_are_told_with_their_place() =>
        Assert.Equal("/calendar/timeZone", Assert.Single(UpkeepPlanner.Plan(Sound with { Calendar = Sound.Calendar with { TimeZone = "Nowhere" } }).Faults).Field);

    private static void Refused(UpkeepRequest request, string field, string found, string wanted)
    {
        InputFault fault = Assert.Single(UpkeepPlanner.Plan(request).Faults);
        Assert.Equal((field, found, wanted), (fault.Field, fault.Found, fault.Wanted));
    }
}
