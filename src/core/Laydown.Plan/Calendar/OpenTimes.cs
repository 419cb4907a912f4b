using NodaTime;
using NodaTime.TimeZones;

namespace Laydown.Plan.Calendar;

/// <summary>When presses are worked, on the time line of UTC.</summary>
/// <remarks>
/// A local time that a spring night leaves out counts as the instant at which clocks are put forward; a local time that an autumn night has twice counts as its first.
/// So a shift of 22:00 to 06:00 has 7 h in the one night and 9 h in the other.
/// </remarks>
public sealed class OpenTimes
{
    /// <summary>Longest time that is looked at in one go, days: ten years.</summary>
    public const int MostDays = 3660;

    private static readonly ZoneLocalMappingResolver Resolver =
        Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter);

    private readonly ShopCalendar calendar;
    private readonly DateTimeZone zone;

    /// <summary>Open times of a calendar.</summary>
    /// <exception cref="ArgumentException">Its time zone is not known, or a shift ends before it starts.</exception>
    public OpenTimes(ShopCalendar calendar)
    {
        this.calendar = calendar;
        if (CalendarFaults.Of(calendar, "calendar") is [{ } fault, ..])
            throw new ArgumentException(fault.ToString(), nameof(calendar));
        zone = DateTimeZoneProviders.Tzdb[calendar.TimeZone];
    }

    /// <summary>Every span in which a press is worked, cut at both ends, earliest first, none touching the next with the same crew.</summary>
    /// <param name="from">Start of the time looked at.</param>
    /// <param name="to">Its end; none where it is not after the start.</param>
    /// <param name="pressId">The press; null for any press of the shop.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time looked at is longer than <see cref="MostDays"/>.</exception>
    public IReadOnlyList<OpenSpan> Between(DateTimeOffset from, DateTimeOffset to, string? pressId)
    {
        if ((to - from).TotalDays > MostDays)
            throw new ArgumentOutOfRangeException(nameof(to), to, Invariant($"Time looked at: wanted at most {MostDays} days from {from:O}."));
        if (to <= from)
            return [];
        Instant start = Instant.FromDateTimeOffset(from);
        Instant end = Instant.FromDateTimeOffset(to);
        List<Worked> worked = [.. Shifts(start, end, pressId).Select(s => s.Within(start, end)).Where(s => s.End > s.Start)];
        List<Worked> closed = [.. Of(calendar.Closed ?? [], pressId, all: true)];
        if (pressId is not null)
            closed.AddRange(Windows(start, end, pressId).Select(w => new Worked(w.Start, w.End, 1)));
        return [.. Cut(worked, closed).Select(s => new OpenSpan(Local(s.Start), Local(s.End), s.Crew))];
    }

    /// <summary>For each place of a bench the spans in which it is worked: the first is worked whenever anybody is there, the second when two are, and so on.</summary>
    /// <param name="from">Start of the time looked at.</param>
    /// <param name="to">Its end; none where it is not after the start.</param>
    /// <param name="bench">A bench of the calendar.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time looked at is longer than <see cref="MostDays"/>.</exception>
    public IReadOnlyList<IReadOnlyList<OpenSpan>> PlacesBetween(DateTimeOffset from, DateTimeOffset to, WorkBench bench)
    {
        IReadOnlyList<OpenSpan> spans = new OpenTimes(bench.HoursIn(calendar)).Between(from, to, null);
        return [.. Enumerable.Range(1, bench.Places).Select(people => (IReadOnlyList<OpenSpan>)[.. spans.Where(s => bench.Shifts is null || s.Crew >= people)])];
    }

    /// <summary>Every maintenance window of a press that lies between two instants, wholly or in part, earliest first.</summary>
    /// <param name="from">Start of the time looked at.</param>
    /// <param name="to">Its end; none where it is not after the start.</param>
    /// <param name="pressId">The press.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time looked at is longer than <see cref="MostDays"/>.</exception>
    public IReadOnlyList<MaintenanceSpan> MaintenanceBetween(DateTimeOffset from, DateTimeOffset to, string pressId)
    {
        if ((to - from).TotalDays > MostDays)
            throw new ArgumentOutOfRangeException(nameof(to), to, Invariant($"Time looked at: wanted at most {MostDays} days from {from:O}."));
        return to <= from ? [] : [.. Windows(Instant.FromDateTimeOffset(from), Instant.FromDateTimeOffset(to), pressId)
            .OrderBy(w => w.Start).Select(w => new MaintenanceSpan(Local(w.Start), Local(w.End), w.Of.What, w.Of.By, w.Of.RunsMayPause))];
    }

    /// <summary>The spans between open ones: in each of them the press stands though nothing is wrong.</summary>
    /// <param name="from">Start of the time looked at.</param>
    /// <param name="to">Its end.</param>
    /// <param name="pressId">The press; null for any press of the shop.</param>
    public IReadOnlyList<IdleSpan> ClosedBetween(DateTimeOffset from, DateTimeOffset to, string? pressId) =>
        to <= from ? [] : IdleSpans.Between(At(from), At(to), Between(from, to, pressId).Select(s => (s.Start, s.End)));

    /// <summary>The same instant with the shop's offset from UTC.</summary>
    public DateTimeOffset At(DateTimeOffset instant) => Local(Instant.FromDateTimeOffset(instant));

    /// <summary>The instant of a local time.</summary>
    public DateTimeOffset At(DateOnly day, TimeOnly time) => Local(InstantOf(day, time));

    private DateTimeOffset Local(Instant instant) => instant.InZone(zone).ToDateTimeOffset();

    private Instant InstantOf(DateOnly day, TimeOnly time) =>
        new LocalDateTime(day.Year, day.Month, day.Day, time.Hour, time.Minute, time.Second).InZone(zone, Resolver).ToInstant();

    private IEnumerable<Worked> Shifts(Instant start, Instant end, string? pressId)
    {
        // A shift may start the day before and end the day after.
        DateOnly first = DateOnly.FromDateTime(Local(start).Date).AddDays(-1);
        DateOnly last = DateOnly.FromDateTime(Local(end).Date);
        WeekShift[] shifts = [.. calendar.Shifts.Where(s => IsFor(s.PressIds, pressId))];
        for (DateOnly day = first; day <= last; day = day.AddDays(1))
        {
            if (calendar.Holidays.Any(h => h.Covers(day)))
                continue;
            foreach (WeekShift shift in shifts.Where(s => s.Days.Contains(day.DayOfWeek)))
                yield return new(InstantOf(day, shift.Start), InstantOf(shift.EndsNextDay ? day.AddDays(1) : day, shift.End), shift.Crew);
        }

        foreach (Worked extra in Of(calendar.Extra, pressId, all: false))
            yield return extra;
    }

    private IEnumerable<(Instant Start, Instant End, PressMaintenance Of)> Windows(Instant start, Instant end, string pressId)
    {
        DateOnly last = DateOnly.FromDateTime(Local(end).Date);
        foreach (PressMaintenance window in (calendar.Maintenance ?? []).Where(m => m.PressId == pressId))
        {
            for (DateOnly day = window.Day ?? DateOnly.FromDateTime(Local(start).Date).AddDays(-1); day <= (window.Day ?? last); day = day.AddDays(1))
            {
                (Instant from, Instant to) = (InstantOf(day, window.Start), InstantOf(window.EndsNextDay ? day.AddDays(1) : day, window.End));
                if (window.StartsOn(day) && to > start && from < end && to > from)
                    yield return (from, to, window);
            }
        }
    }

    // Hours kept out of work hold for the whole shop only where they name no press.
    private IEnumerable<Worked> Of(IReadOnlyList<DayTime> times, string? pressId, bool all) => times
        .Where(t => all && pressId is null ? t.PressIds is null : IsFor(t.PressIds, pressId))
        .Select(t => new Worked(InstantOf(t.Day, t.Start), InstantOf(t.EndsNextDay ? t.Day.AddDays(1) : t.Day, t.End), t.Crew));

    private static bool IsFor(IReadOnlyList<string>? pressIds, string? pressId) =>
        pressIds is null || pressId is null || pressIds.Contains(pressId, StringComparer.Ordinal);

    /// <summary>Spans of one crew each: between two borders nothing changes, so each piece is looked at once and joined with its neighbour.</summary>
    private static List<Worked> Cut(List<Worked> worked, List<Worked> closed)
    {
        Instant[] borders = [.. worked.Concat(closed).SelectMany(w => (Instant[])[w.Start, w.End]).Distinct().Order()];
        List<Worked> spans = [];
        foreach ((Instant start, Instant end) in borders.Zip(borders.Skip(1)))
        {
            int crew = worked.Where(w => w.Start <= start && end <= w.End).Sum(w => w.Crew);
            if (crew == 0 || closed.Any(c => c.Start <= start && end <= c.End))
                continue;
            if (spans.Count > 0 && spans[^1].End == start && spans[^1].Crew == crew)
                spans[^1] = spans[^1] with { End = end };
            else
                spans.Add(new(start, end, crew));
        }

        return spans;
    }

    private readonly record struct Worked(Instant Start, Instant End, int Crew)
    {
        public Worked Within(Instant start, Instant end) => this with { Start = Instant.Max(Start, start), End = Instant.Min(End, end) };
    }
}
