namespace Laydown.Plan.Calendar;

/// <summary>When the shop works: shifts of the week, holidays, extra shifts, hours kept out of work.</summary>
/// <remarks>
/// All times are local. A shift belongs to the day it starts on: a holiday takes out the shifts that start on it, a night shift of the day before is worked to its end.
/// Extra shifts are worked on holidays too. Sound when <see cref="CalendarFaults"/> finds nothing.
/// </remarks>
/// <param name="TimeZone">Time zone by its name in the IANA data base, such as <c>Europe/Dublin</c>.</param>
/// <param name="Shifts">Shifts of the week; at least one.</param>
/// <param name="Holidays">Holidays, not overlapping.</param>
/// <param name="Extra">Extra shifts, none within another shift of the same press.</param>
/// <param name="Closed">Hours in which presses are not worked though a shift is on, such as service; null for none.</param>
/// <param name="Maintenance">Windows in which a press is looked after, none overlapping another of its press; null for none.</param>
/// <param name="Benches">Benches of the work after the press; null where there is always room for it.</param>
public sealed record ShopCalendar(
    string TimeZone,
    IReadOnlyList<WeekShift> Shifts,
    IReadOnlyList<ShopHoliday> Holidays,
    IReadOnlyList<DayTime> Extra,
    IReadOnlyList<DayTime>? Closed = null,
    IReadOnlyList<PressMaintenance>? Maintenance = null,
    IReadOnlyList<WorkBench>? Benches = null);
