using Laydown.Plan.Calendar;
using Laydown.Plan.Orders;

namespace Laydown.Demo.Descriptions;

/// <summary>When the demo shop works. All of it is invented.</summary>
internal static class DemoCalendar
{
    private const string LongBelt = "long-belt";

    /// <summary>What its file says. From Friday 18:00 to Monday 06:00 are 60 h.</summary>
    public static ShopCalendar Describe() => new(
        TimeZone: "Europe/Dublin",
        Shifts:
        [
            new("early", [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday], new(6, 0), new(14, 0), Crew: 2),
            new("late", [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday], new(14, 0), new(21, 30), PressIds: [LongBelt]),
            new("Friday afternoon", [DayOfWeek.Friday], new(14, 0), new(18, 0), PressIds: [LongBelt]),
        ],
        Holidays:
        [
            new("Christmas", new(2026, 12, 25), new(2026, 12, 28)),
            new("New Year", new(2027, 1, 1), new(2027, 1, 1)),
        ],
        Extra: [new("Saturday before the opening", new(2026, 12, 5), new(8, 0), new(12, 0), PressIds: [LongBelt])],
        Maintenance:
        [
            new("yearly service", LongBelt, new(6, 0), new(14, 0), Day: new(2026, 12, 16), By: "the maker's fitter"),
            new("rails wiped and greased", LongBelt, new(13, 0), new(13, 40), Days: [DayOfWeek.Friday], By: "the early shift"),
        ],
        Benches:
        [
            new("cutting", "Cutting table", [FinishingKind.CutContour, FinishingKind.CutSquare, FinishingKind.Drill], Shifts: [new("day", Weekdays, new(7, 0), new(15, 0))]),
            new("laminating", "Laminator", [FinishingKind.Laminate, FinishingKind.Mount], Shifts: [new("day", Weekdays, new(7, 0), new(15, 0))]),
            new("sewing", "Sewing table", [FinishingKind.Hem, FinishingKind.PolePocket, FinishingKind.Eyelet, FinishingKind.Tape], Shifts: [new("morning", Weekdays, new(7, 0), new(12, 0))]),
            new("packing", "Packing table", [FinishingKind.Pack], Places: 2,
                Shifts: [new("early", Weekdays, new(7, 0), new(12, 0), Crew: 2), new("afternoon", Weekdays, new(12, 0), new(15, 0))]),
        ]);

    private static IReadOnlyList<DayOfWeek> Weekdays => [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday];
}
