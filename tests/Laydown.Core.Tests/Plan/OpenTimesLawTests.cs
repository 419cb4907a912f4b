using Laydown.Plan.Calendar;

namespace Laydown.Core.Tests.Plan;

public sealed class OpenTimesLawTests
{
    private static readonly DayOfWeek[] Weekdays =
        [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday];

    private static readonly ShopCalendar Days = new("Europe/Berlin", [new("day", Weekdays, new(6, 0), new(18, 0))], [], []);

    private static readonly OpenTimes Open = new(Days);

    // Clocks are put forward in Berlin on 29 March and back on 25 October 2026, in New York on 8 March and 1 November.
    [Theory]
    [InlineData("Europe/Berlin", "2026-06-05", 60)]
    [InlineData("Europe/Berlin", "2026-03-27", 59)]
    [InlineData("Europe/Berlin", "2026-10-23", 61)]
    [InlineData("America/New_York", "2026-03-06", 59)]
    [InlineData("America/New_York", "2026-10-30", 61)]
    [InlineData("America/New_York", "2026-10-23", 60)]
    [InlineData("Europe/Dublin", "2026-11-27", 60)]
    [InlineData("Asia/Tokyo", "2026-03-27", 60)]
    public void The_weekend_from_Friday_18_to_Monday_6_counts_the_hours_that_pass(string zone, string friday, double hours)
    {
        OpenTimes open = new(Days with { TimeZone = zone });
        DateOnly day = DateOnly.Parse(friday, System.Globalization.CultureInfo.InvariantCulture);
        IdleSpan weekend = Assert.Single(open.ClosedBetween(open.At(day, new(12, 0)), open.At(day.AddDays(3), new(12, 0)), null));
        Assert.Equal(open.At(day, new(18, 0)), weekend.Start);
        Assert.Equal(open.At(day.AddDays(3), new(6, 0)), weekend.End);
        Assert.Equal(hours, weekend.Hours);
    }

    [Theory]
    [InlineData("2026-06-06", 8)]
    [InlineData("2026-03-28", 7)]
    [InlineData("2026-10-24", 9)]
    public void A_shift_through_the_night_has_the_hours_that_pass(string saturday, double hours)
    {
        OpenTimes open = new(new("Europe/Berlin", [new("night", [DayOfWeek.Saturday], new(22, 0), new(6, 0), EndsNextDay: true)], [], []));
        DateOnly day = DateOnly.Parse(saturday, System.Globalization.CultureInfo.InvariantCulture);
        OpenSpan night = Assert.Single(open.Between(open.At(day, new(0, 0)), open.At(day.AddDays(2), new(0, 0)), null));
        Assert.Equal(hours, night.Hours);
    }

    [Fact]
    public void A_time_left_out_by_the_spring_night_is_the_instant_clocks_go_forward()
    {
        OpenTimes open = new(new("Europe/Berlin", [new("night", [DayOfWeek.Sunday], new(2, 30), new(6, 0))], [], []));
        OpenSpan night = Assert.Single(open.Between(Utc(2026, 3, 28, 12), Utc(2026, 3, 29, 12), null));
        Assert.Equal(Utc(2026, 3, 29, 1), night.Start);
        Assert.Equal(Utc(2026, 3, 29, 4), night.End);
    }

    [Fact]
    public void A_time_the_autumn_night_has_twice_is_its_first()
    {
        OpenTimes open = new(new("Europe/Berlin", [new("night", [DayOfWeek.Saturday], new(22, 0), new(2, 30), EndsNextDay: true)], [], []));
        OpenSpan night = Assert.Single(open.Between(Utc(2026, 10, 24, 12), Utc(2026, 10, 25, 12), null));
        Assert.Equal(Utc(2026, 10, 25, 0).AddMinutes(30), night.End);
        Assert.Equal(4.5, night.Hours);
    }

    [Fact]
    public void A_holiday_takes_out_the_shifts_that_start_on_it_and_no_other()
    {
        ShopCalendar nights = new("Europe/Berlin", [new("night", Weekdays, new(22, 0), new(6, 0), EndsNextDay: true)],
            [new("rest", new(2026, 6, 3), new(2026, 6, 3))], []);
        OpenTimes open = new(nights);
        IReadOnlyList<OpenSpan> spans = open.Between(open.At(new(2026, 6, 1), new(12, 0)), open.At(new(2026, 6, 5), new(12, 0)), null);
        Assert.Equal([1, 2, 4], spans.Select(s => s.Start.Day));
        Assert.All(spans, s => Assert.Equal(8, s.Hours));
    }

    [Fact]
    public void An_extra_shift_is_worked_on_a_holiday_and_hours_kept_out_are_not()
    {
        OpenTimes open = new(Days with
        {
            Holidays = [new("rest", new(2026, 6, 3), new(2026, 6, 3))],
            Extra = [new("fair", new(2026, 6, 3), new(8, 0), new(10, 0), PressIds: ["one"], Crew: 3)],
            Closed = [new("service", new(2026, 6, 4), new(9, 0), new(11, 0), PressIds: ["one"])],
        });
        DateTimeOffset from = open.At(new(2026, 6, 3), new(0, 0));
        Assert.Equal([(8, 10, 3), (6, 9, 1), (11, 18, 1)], Hours(open.Between(from, from.AddDays(2), "one")));
        Assert.Equal([(6, 18, 1)], Hours(open.Between(from, from.AddDays(2), "two")));
    }

    [Fact]
    public void Shifts_that_touch_are_one_span_while_the_crew_stays_the_same()
    {
        OpenTimes open = new(new("UTC",
        [
            new("early", [DayOfWeek.Monday], new(6, 0), new(14, 0)),
            new("late", [DayOfWeek.Monday], new(14, 0), new(22, 0)),
            new("night", [DayOfWeek.Monday], new(22, 0), new(6, 0), EndsNextDay: true, Crew: 2),
        ], [], []));
        Assert.Equal([(6, 22, 1), (22, 6, 2)], Hours(open.Between(Utc(2026, 6, 1, 0), Utc(2026, 6, 3, 0), null)));
    }

    [Fact]
    public void Open_and_closed_spans_cover_the_year_once_wherever_it_is_cut()
    {
        DateTimeOffset from = Utc(2026, 1, 1, 0);
        DateTimeOffset to = Utc(2027, 1, 1, 0);
        double whole = Open.Between(from, to, null).Sum(s => s.Hours);
        Assert.Equal(365 * 24, whole + Open.ClosedBetween(from, to, null).Sum(s => s.Hours), 1e-6);
        Assert.Equal(261 * 12, whole, 1e-6);
        for (int hours = 7; hours < 365 * 24; hours += 731)
        {
            DateTimeOffset cut = from.AddHours(hours);
            Assert.Equal(whole, Open.Between(from, cut, null).Sum(s => s.Hours) + Open.Between(cut, to, null).Sum(s => s.Hours), 1e-6);
        }
    }

    [Fact]
    public void Idle_spans_are_what_uses_leave_free_in_any_order()
    {
        DateTimeOffset t = Utc(2026, 6, 1, 0);
        (DateTimeOffset, DateTimeOffset)[] uses = [(t.AddHours(5), t.AddHours(7)), (t.AddHours(-2), t.AddHours(1)), (t.AddHours(6), t.AddHours(6.5)), (t.AddHours(20), t.AddHours(30))];
        IReadOnlyList<IdleSpan> idle = IdleSpans.Between(t, t.AddHours(24), uses);
        Assert.Equal([new(t.AddHours(1), t.AddHours(5)), new(t.AddHours(7), t.AddHours(20))], idle);
        Assert.Equal(idle, IdleSpans.Between(t, t.AddHours(24), uses.Reverse()));
    }

    private static IEnumerable<(int From, int To, int Crew)> Hours(IEnumerable<OpenSpan> spans) => spans.Select(s => (s.Start.Hour, s.End.Hour, s.Crew));

    private static DateTimeOffset Utc(int year, int month, int day, int hour) => new(year, month, day, hour, 0, 0, TimeSpan.Zero);

    /// <summary>Open time and windows never meet, and together they are the open time there is without windows; no other press loses any.</summary>
    [Fact]
    public void Maintenance_takes_its_time_out_of_its_press_alone()
    {
        ShopCalendar bare = new("Europe/Berlin", [new("all", [DayOfWeek.Friday, DayOfWeek.Saturday, DayOfWeek.Sunday], new(0, 0), new(0, 0), EndsNextDay: true)], [], []);
        OpenTimes open = new(bare), less = new(bare with
        {
            Maintenance =
            [
                new("greased", "one", new(13, 0), new(14, 0), Days: [DayOfWeek.Friday, DayOfWeek.Sunday]),
                new("service", "one", new(22, 0), new(5, 0), Day: new(2026, 10, 24), By: "Ada", EndsNextDay: true),
            ],
        });

        // From Friday before the night in which clocks are put back, which has an hour more.
        (DateTimeOffset from, DateTimeOffset to) = (open.At(new DateOnly(2026, 10, 23), TimeOnly.MinValue), open.At(new DateOnly(2026, 10, 26), TimeOnly.MinValue));
        IReadOnlyList<MaintenanceSpan> windows = less.MaintenanceBetween(from, to, "one");
        Assert.Equal([1, 8, 1], windows.Select(w => (w.End - w.Start).TotalHours));
        IReadOnlyList<OpenSpan> left = less.Between(from, to, "one");
        Assert.Equal(73 - 10, left.Sum(s => s.Hours), 1e-9);
        Assert.All(left, s => Assert.DoesNotContain(windows, w => w.Start < s.End && s.Start < w.End));
        Assert.Equal(open.Between(from, to, "two"), less.Between(from, to, "two"));
        Assert.Empty(less.MaintenanceBetween(from, to, "two"));
    }
}
