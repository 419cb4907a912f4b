using Laydown.Plan.Calendar;
using Laydown.Plan.Orders;

namespace Laydown.Core.Tests.Plan;

public sealed class BenchHoursLawTests
{
    private static readonly DayOfWeek[] Weekdays = [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday];
    private static readonly WorkBench Packing = new("packing", "Packing", [FinishingKind.Pack], 2, [new("early", Weekdays, new(7, 0), new(12, 0), Crew: 2), new("afternoon", Weekdays, new(12, 0), new(15, 0))]);
    private static readonly ShopCalendar Shop = new(
        "Europe/Dublin", [new("day", Weekdays, new(6, 0), new(14, 0), Crew: 3)], [new("rest", new(2026, 11, 26), new(2026, 11, 26))], [],
        Closed: [new("talk", new(2026, 11, 25), new(9, 0), new(10, 0))], Benches: [Packing]);

    private static readonly DateTimeOffset From = new(2026, 11, 25, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void The_second_place_is_worked_while_two_are_there_and_none_on_holidays()
    {
        IReadOnlyList<IReadOnlyList<OpenSpan>> places = new OpenTimes(Shop).PlacesBetween(From, From.AddDays(3), Packing);
        Assert.Equal([8, 8], Hours(places[0]));
        Assert.Equal([5, 5], Hours(places[1]));
        Assert.All(places.SelectMany(p => p), s => Assert.NotEqual(26, s.Start.Day));
    }

    [Fact]
    public void A_bench_without_shifts_is_worked_at_all_places_when_the_shop_is() => Assert.All(
        new OpenTimes(Shop).PlacesBetween(From, From.AddDays(1), Packing with { Shifts = null }), p => Assert.Equal([7], Hours(p)));

    [Fact]
    public void Hours_kept_out_of_work_and_extra_shifts_are_its_own() => Assert.Equal(
        [7 + 2], Hours(new OpenTimes(Shop).PlacesBetween(From, From.AddDays(1), Packing with { Closed = [new("fetched", new(2026, 11, 25), new(8, 0), new(9, 0))], Extra = [new("evening", new(2026, 11, 25), new(18, 0), new(20, 0))] })[0]));

    // Hours of each day, in turn.
    private static IEnumerable<double> Hours(IReadOnlyList<OpenSpan> spans) => spans.GroupBy(s => s.Start.Date).Select(g => g.Sum(s => s.Hours));
}
