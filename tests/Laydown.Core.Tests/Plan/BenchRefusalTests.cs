using Laydown.Measures;
using Laydown.Plan.Calendar;
using Laydown.Plan.Orders;

namespace Laydown.Core.Tests.Plan;

public sealed class BenchRefusalTests
{
    private static readonly ShopCalendar Sound = new("Europe/Berlin", [Shift("day", 6, 14)], [], [], Benches: [new("saw", "Saw", [FinishingKind.CutSquare], Shifts: [Shift("saw", 7, 12)])]);

    [Fact]
    public void Sound_benches_have_no_fault() => Assert.Empty(CalendarFaults.Of(Sound, "calendar.json", ["one"]));

    [Fact]
    public void A_bench_named_twice_is_refused() => Refused([Bench, Bench with { Kinds = [FinishingKind.Pack] }], "/benches/1/id", "saw");

    [Fact]
    public void A_kind_of_work_at_two_benches_is_refused_with_the_first() =>
        Refused([Bench, new("table", "Table", [FinishingKind.CutSquare])], "/benches/1/kinds", "CutSquare, which is done at saw already");

    [Fact]
    public void A_kind_of_work_named_twice_is_refused() => Refused([Bench with { Kinds = [FinishingKind.Hem, FinishingKind.Hem] }], "/benches/0/kinds", "Hem, which is done at saw already");

    [Fact]
    public void A_bench_without_work_is_refused() => Refused([Bench with { Kinds = [] }], "/benches/0/kinds", "an empty list");

    [Theory, InlineData(0), InlineData(21)]
    public void A_bench_without_places_or_with_too_many_is_refused(int places) => Refused([Bench with { Places = places, Shifts = null }], "/benches/0/places", Invariant($"{places}"));

    [Fact]
    public void More_places_than_people_are_refused() => Refused([Bench with { Places = 2 }], "/benches/0/places", "2, with 1 at most in its shifts");

    [Fact]
    public void A_shift_of_a_bench_that_ends_before_it_starts_is_refused() => Refused([Bench with { Shifts = [Shift("late", 12, 7)] }], "/benches/0/shifts/0/end", "07:00, before the start");

    [Fact]
    public void Shifts_of_a_bench_that_overlap_are_refused() => Refused([Bench with { Shifts = [Shift("one", 7, 12), Shift("two", 11, 13)] }], "/benches/0/shifts/1", "two, 11:00 to 13:00");

    [Fact]
    public void A_bench_without_a_shift_is_refused() => Refused([Bench with { Shifts = [] }], "/benches/0/shifts", "an empty list");

    [Fact]
    public void An_extra_shift_within_a_shift_of_the_bench_is_refused() =>
        Refused([Bench with { Extra = [new("more", new(2026, 6, 1), new(11, 0), new(15, 0))] }], "/benches/0/extra/0", "more, 11:00 to 15:00 on 2026-06-01");

    [Fact]
    public void Hours_of_a_bench_that_name_a_press_are_refused() => Refused([Bench with { Shifts = [Shift("day", 7, 12) with { PressIds = ["one"] }] }], "/benches/0/shifts", "pressIds");

    private static WorkBench Bench => Sound.Benches![0];

    private static WeekShift Shift(string name, int start, int end) =>
        new(name, [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday], new(start, 0), new(end, 0));

    private static void Refused(IReadOnlyList<WorkBench> benches, string field, string found)
    {
        InputFault fault = CalendarFaults.Of(Sound with { Benches = benches }, "calendar.json", ["one"])[0];
        Assert.Equal(("calendar.json", field, found), (fault.File, fault.Field, fault.Found));
    }
}
