using Laydown.Core.Tests.Plan;
using Laydown.Core.Tests.Press;
using Laydown.Plan.Calendar;
using Laydown.Plan.Upkeep;
using Laydown.Press.Machines;

namespace Laydown.Core.Tests.Upkeep;

/// <summary>Small invented plans of upkeep. Monday is 1 June 2026; the shop works weekdays 6 to 18 in Berlin.</summary>
internal static class Cares
{
    private static readonly DayOfWeek[] Weekdays = [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday];

    public static readonly ShopCalendar Calendar = new("Europe/Berlin", [new("day", Weekdays, new(6, 0), new(18, 0))], [], []);

    public static readonly OpenTimes Open = new(Calendar);

    public static DateTimeOffset At(int day, int hour, int minute = 0, int month = 6) => Open.At(new(2026, month, day), new(hour, minute));

    public static PressUse Use(string id, DateTimeOffset start, double hours, double printedMl = 0, double setUpMl = 0, string tank = "T-Cyan") =>
        new(id, "work", start, start.AddHours(hours), [new(tank, setUpMl, printedMl)]);

    /// <summary>A press without care tasks, so that what is asked stands alone.</summary>
    public static PressDescription Press(LongStopRules? stop = null, params CareRule[] rules) =>
        Presses.Hybrid(Presses.Mode()) with { Care = new(rules, stop ?? new()) };

    public static UpkeepRequest Request(PressDescription press, DateTimeOffset from, DateTimeOffset to, params PressUse[] uses) => new(
        press, Presses.Inks(), Works.ShopRates(), Calendar, new(press.Id, from, [], []), [], uses, from, to);
}
