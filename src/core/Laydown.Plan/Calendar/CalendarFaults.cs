using Laydown.Measures;
using NodaTime;

namespace Laydown.Plan.Calendar;

/// <summary>What in a calendar cannot be: shifts that end before they start or overlap, overlapping holidays, an unknown time zone.</summary>
public static class CalendarFaults
{
    private const int DayMinutes = 24 * 60;
    private const int WeekMinutes = 7 * DayMinutes;

    /// <summary>Every fault, each with JSON path; none when the calendar is sound.</summary>
    /// <param name="calendar">The calendar as read.</param>
    /// <param name="file">File it came from.</param>
    /// <param name="pressIds">The presses of the shop; null where they are not known here.</param>
    public static IReadOnlyList<InputFault> Of(ShopCalendar calendar, string file, IReadOnlyCollection<string>? pressIds = null)
    {
        List<InputFault> faults = [];
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(calendar.TimeZone) is null)
            faults.Add(new(file, null, "/timeZone", calendar.TimeZone, "a time zone by its name in the IANA data base, such as Europe/Dublin"));
        if (calendar.Shifts.Count == 0)
            faults.Add(new(file, null, "/shifts", "an empty list", "at least one shift"));
        List<Hours> shifts = [.. calendar.Shifts.Select((s, i) => new Hours(Invariant($"/shifts/{i}"), s.Name, s.Start, s.End, s.EndsNextDay, s.PressIds, s.Crew))];
        List<Hours> extra = OfDays(calendar.Extra, "/extra");
        List<Hours> closed = OfDays(calendar.Closed ?? [], "/closed");
        faults.AddRange(shifts.Concat(extra).Concat(closed).SelectMany(h => h.Faults(file, pressIds)));
        faults.AddRange(calendar.Shifts.Index().Where(s => s.Item.Days.Count == 0 || s.Item.Days.Distinct().Count() < s.Item.Days.Count)
            .Select(s => new InputFault(file, null, Invariant($"/shifts/{s.Index}/days"), string.Join(", ", s.Item.Days), "days of the week, at least one, each once")));
        faults.AddRange(HolidayFaults(calendar.Holidays, file));
        faults.AddRange(MaintenanceFaults.Of(calendar.Maintenance ?? [], file, pressIds));
        faults.AddRange(BenchFaults.Of(calendar, file));

        // Whether hours overlap is asked only once each of them is sound by itself.
        return faults.Count > 0 ? faults : [.. WeekOverlaps(calendar, shifts, file), .. ExtraOverlaps(calendar, shifts, extra, file)];
    }

    private static List<Hours> OfDays(IReadOnlyList<DayTime> times, string path) =>
        [.. times.Select((t, i) => new Hours(Invariant($"{path}/{i}"), t.Name, t.Start, t.End, t.EndsNextDay, t.PressIds, t.Crew))];

    private static IEnumerable<InputFault> HolidayFaults(IReadOnlyList<ShopHoliday> holidays, string file)
    {
        foreach ((int i, ShopHoliday holiday) in holidays.Index())
        {
            if (holiday.Last < holiday.First)
                yield return new(file, null, Invariant($"/holidays/{i}/last"), Invariant($"{holiday.Last:yyyy-MM-dd}"), Invariant($"{holiday.First:yyyy-MM-dd}, its first day, or later"));
            else if (holidays.Take(i).FirstOrDefault(h => h.First <= holiday.Last && holiday.First <= h.Last) is { } other)
                yield return new(file, null, Invariant($"/holidays/{i}"), Invariant($"{holiday.Name}, {holiday.First:yyyy-MM-dd} to {holiday.Last:yyyy-MM-dd}"), Invariant($"days outside {other.Name}, {other.First:yyyy-MM-dd} to {other.Last:yyyy-MM-dd}"));
        }
    }

    // Two shifts of one press overlap when they do so anywhere in the week, the night from Sunday to Monday included.
    private static IEnumerable<InputFault> WeekOverlaps(ShopCalendar calendar, List<Hours> shifts, string file)
    {
        for (int i = 0; i < shifts.Count; i++)
        {
            // A shift that ends next day later than it starts is refused before, so no shift overlaps itself.
            for (int j = 0; j < i; j++)
            {
                bool meet = calendar.Shifts[i].Days.Any(one => calendar.Shifts[j].Days.Any(other =>
                    Meet(((int)one * DayMinutes) + shifts[i].StartMinute, shifts[i].Minutes, ((int)other * DayMinutes) + shifts[j].StartMinute, shifts[j].Minutes)));
                if (meet && shifts[i].SharesPress(shifts[j]))
                    yield return new(file, null, shifts[i].Path, Invariant($"{shifts[i]}"), Invariant($"hours outside {shifts[j]}, or other presses"));
            }
        }
    }

    private static bool Meet(int one, int oneMinutes, int other, int otherMinutes) =>
        ((other - one) % WeekMinutes + WeekMinutes) % WeekMinutes < oneMinutes || ((one - other) % WeekMinutes + WeekMinutes) % WeekMinutes < otherMinutes;

    private static IEnumerable<InputFault> ExtraOverlaps(ShopCalendar calendar, List<Hours> shifts, List<Hours> extra, string file)
    {
        for (int i = 0; i < extra.Count; i++)
        {
            DateOnly day = calendar.Extra[i].Day;
            int index = i;
            IEnumerable<(Hours Hours, DateOnly Day)> others = extra.Take(i).Select((h, j) => (h, calendar.Extra[j].Day))
                .Concat(Enumerable.Range(-1, 3).Select(d => day.AddDays(d)).Where(d => !calendar.Holidays.Any(h => h.Covers(d)))
                    .SelectMany(d => shifts.Where((_, s) => calendar.Shifts[s].Days.Contains(d.DayOfWeek)).Select(h => (h, d))));
            foreach ((Hours hours, DateOnly other) in others.Where(o => extra[index].SharesPress(o.Hours)))
            {
                int apart = ((other.DayNumber - day.DayNumber) * DayMinutes) + hours.StartMinute - extra[i].StartMinute;
                if (apart < extra[i].Minutes && -apart < hours.Minutes)
                    yield return new(file, null, extra[i].Path, Invariant($"{extra[i]} on {day:yyyy-MM-dd}"), Invariant($"hours outside {hours} on {other:yyyy-MM-dd}, or other presses"));
            }
        }
    }

    private sealed record Hours(string Path, string Name, TimeOnly Start, TimeOnly End, bool EndsNextDay, IReadOnlyList<string>? PressIds, int Crew)
    {
        public int StartMinute => (Start.Hour * 60) + Start.Minute;

        public int Minutes => (End.Hour * 60) + End.Minute - StartMinute + (EndsNextDay ? DayMinutes : 0);

        public bool SharesPress(Hours other) => PressIds is null || other.PressIds is null || PressIds.Intersect(other.PressIds, StringComparer.Ordinal).Any();

        public IEnumerable<InputFault> Faults(string file, IReadOnlyCollection<string>? known)
        {
            if (Minutes <= 0)
                yield return new(file, null, Path + "/end", Invariant($"{End:HH:mm}, {(Minutes == 0 ? "the start itself" : "before the start")}"), Invariant($"a time after {Start:HH:mm}, or endsNextDay"));
            else if (Minutes > DayMinutes)
                yield return new(file, null, Path + "/end", Invariant($"{End:HH:mm} of the next day, {Minutes / 60.0:0.##} h"), "at most 24 h");
            if (Start.Second != 0 || Start.Millisecond != 0 || End.Second != 0 || End.Millisecond != 0)
                yield return new(file, null, Path + "/start", Invariant($"{Start:HH:mm:ss.fff} to {End:HH:mm:ss.fff}"), "whole minutes");
            if (Crew is < 1 or > 100)
                yield return new(file, null, Path + "/crew", Invariant($"{Crew}"), "1 to 100");
            if (PressIds is { Count: 0 })
                yield return new(file, null, Path + "/pressIds", "an empty list", "presses, or nothing for all");
            foreach (string id in (PressIds ?? []).Where(id => known is not null && !known.Contains(id)))
                yield return new(file, null, Path + "/pressIds", id, "one of " + string.Join(", ", known!));
        }

        public override string ToString() => Invariant($"{Name}, {Start:HH:mm} to {End:HH:mm}{(EndsNextDay ? " of the next day" : "")}");
    }
}
