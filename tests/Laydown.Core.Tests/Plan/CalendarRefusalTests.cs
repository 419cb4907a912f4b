using Laydown.Measures;
using Laydown.Plan.Calendar;

namespace Laydown.Core.Tests.Plan;

public sealed class CalendarRefusalTests
{
    private static readonly ShopCalendar Sound = new("Europe/Berlin", [Shift("day", 6, 14)], [], []);

    [Fact]
    public void A_sound_calendar_has_no_fault() => Assert.Empty(CalendarFaults.Of(Sound, "calendar.json", ["one"]));

    [Fact]
    public void A_time_zone_nobody_knows_is_refused_by_name() => Refused(Sound with { TimeZone = "Europe/Saltmarsh" }, "/timeZone", "Europe/Saltmarsh");

    [Fact]
    public void A_shift_that_ends_before_it_starts_is_refused() => Refused(Sound with { Shifts = [Shift("late", 22, 6)] }, "/shifts/0/end", "06:00, before the start");

    [Fact]
    public void A_shift_without_length_is_refused() => Refused(Sound with { Shifts = [Shift("none", 6, 6)] }, "/shifts/0/end", "06:00, the start itself");

    [Fact]
    public void A_shift_longer_than_a_day_is_refused() =>
        Refused(Sound with { Shifts = [Shift("long", 6, 7) with { EndsNextDay = true }] }, "/shifts/0/end", "07:00 of the next day, 25 h");

    [Fact]
    public void Shifts_that_overlap_are_refused() =>
        Refused(Sound with { Shifts = [Shift("day", 6, 14), Shift("late", 13, 20)] }, "/shifts/1", "late, 13:00 to 20:00");

    [Fact]
    public void A_night_shift_that_runs_into_the_next_morning_is_refused() =>
        Refused(Sound with { Shifts = [Shift("day", 6, 14), Shift("night", 22, 7) with { EndsNextDay = true, Days = [DayOfWeek.Sunday] }] }, "/shifts/1", "night, 22:00 to 07:00 of the next day");

    [Fact]
    public void Shifts_of_different_presses_may_overlap() => Assert.Empty(CalendarFaults.Of(
        Sound with { Shifts = [Shift("day", 6, 14) with { PressIds = ["one"] }, Shift("late", 13, 20) with { PressIds = ["two"] }] }, "calendar.json", ["one", "two"]));

    [Fact]
    public void Holidays_that_overlap_are_refused() => Refused(
        Sound with { Holidays = [new("summer", new(2026, 7, 1), new(2026, 7, 14)), new("fair", new(2026, 7, 14), new(2026, 7, 15))] }, "/holidays/1", "fair, 2026-07-14 to 2026-07-15");

    [Fact]
    public void A_holiday_that_ends_before_it_starts_is_refused() =>
        Refused(Sound with { Holidays = [new("summer", new(2026, 7, 14), new(2026, 7, 1))] }, "/holidays/0/last", "2026-07-01");

    [Fact]
    public void An_extra_shift_within_a_shift_of_the_week_is_refused() =>
        Refused(Sound with { Extra = [new("more", new(2026, 6, 1), new(13, 0), new(15, 0))] }, "/extra/0", "more, 13:00 to 15:00 on 2026-06-01");

    [Fact]
    public void The_same_extra_shift_on_a_holiday_is_taken() => Assert.Empty(CalendarFaults.Of(
        Sound with { Extra = [new("more", new(2026, 6, 1), new(13, 0), new(15, 0))], Holidays = [new("rest", new(2026, 6, 1), new(2026, 6, 1))] }, "calendar.json"));

    [Fact]
    public void A_press_the_shop_does_not_have_is_refused() => Refused(Sound with { Shifts = [Shift("day", 6, 14) with { PressIds = ["other"] }] }, "/shifts/0/pressIds", "other");

    [Fact]
    public void A_day_named_twice_is_refused() => Refused(Sound with { Shifts = [Shift("day", 6, 14) with { Days = [DayOfWeek.Monday, DayOfWeek.Monday] }] }, "/shifts/0/days", "Monday, Monday");

    [Fact]
    public void Open_times_of_a_calendar_with_faults_are_refused() =>
        Assert.Contains("/shifts/0/end", Assert.Throws<ArgumentException>(() => new OpenTimes(Sound with { Shifts = [Shift("late", 22, 6)] })).Message, StringComparison.Ordinal);

    [Fact]
    public void Maintenance_that_ends_before_it_starts_is_refused() =>
        Refused(Sound with { Maintenance = [Weekly(14, 13)] }, "/maintenance/0/end", "13:00, before the start");

    [Fact]
    public void Maintenance_of_a_press_the_shop_does_not_have_is_refused() =>
        Refused(Sound with { Maintenance = [Weekly(13, 14) with { PressId = "other" }] }, "/maintenance/0/pressId", "other");

    [Fact]
    public void Maintenance_on_no_day_or_on_two_kinds_of_days_is_refused()
    {
        Refused(Sound with { Maintenance = [Weekly(13, 14) with { Days = null }] }, "/maintenance/0/days", "no day");
        Refused(Sound with { Maintenance = [Weekly(13, 14) with { Day = new(2026, 6, 1) }] }, "/maintenance/0/days", "a day and days of the week");
        Refused(Sound with { Maintenance = [Weekly(13, 14) with { Days = [] }] }, "/maintenance/0/days", "an empty list");
    }

    [Fact]
    public void Maintenance_without_words_is_refused() => Refused(Sound with { Maintenance = [Weekly(13, 14) with { What = " " }] }, "/maintenance/0/what", "nothing");

    [Fact]
    public void Windows_of_one_press_that_overlap_are_refused()
    {
        PressMaintenance once = new("service", "one", new(8, 0), new(13, 30), Day: new(2026, 6, 1));
        Refused(Sound with { Maintenance = [Weekly(13, 14), once] }, "/maintenance/1", "service, 2026-06-01 08:00 to 13:30");
        Refused(Sound with { Maintenance = [Weekly(13, 14), Weekly(12, 15)] }, "/maintenance/1", "greased, Monday 12:00 to 15:00");
        PressMaintenance night = new("night", "one", new(22, 0), new(13, 30), Days: [DayOfWeek.Sunday], EndsNextDay: true);
        Refused(Sound with { Maintenance = [Weekly(13, 14), night] }, "/maintenance/1", "night, Sunday 22:00 to 13:30 of the next day");
        Assert.Empty(CalendarFaults.Of(Sound with { Maintenance = [Weekly(13, 14), once with { Day = new(2026, 6, 2) }, Weekly(12, 15) with { PressId = "two" }, Weekly(14, 15)] }, "calendar.json", ["one", "two"]));
    }

    private static PressMaintenance Weekly(int start, int end) => new("greased", "one", new(start, 0), new(end, 0), Days: [DayOfWeek.Monday]);

    private static WeekShift Shift(string name, int start, int end) => new(name, [DayOfWeek.Monday, DayOfWeek.Tuesday], new(start, 0), new(end, 0));

    private static void Refused(ShopCalendar calendar, string field, string found)
    {
        InputFault fault = Assert.Single(CalendarFaults.Of(calendar, "calendar.json", ["one"]));
        Assert.Equal((field, found), (fault.Field, fault.Found));
    }
}
