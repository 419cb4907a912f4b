using Laydown.Measures;

namespace Laydown.Plan.Calendar;

/// <summary>What in maintenance windows cannot be: an end before the start, an unknown press, no day or two kinds of days, windows of one press that overlap.</summary>
internal static class MaintenanceFaults
{
    private const int DayMinutes = 24 * 60;

    /// <summary>Every fault, with JSON path.</summary>
    public static IEnumerable<InputFault> Of(IReadOnlyList<PressMaintenance> windows, string file, IReadOnlyCollection<string>? pressIds)
    {
        InputFault[] faults = [.. windows.SelectMany((w, i) => Alone(w, file, Invariant($"/maintenance/{i}"), pressIds))];

        // Whether windows overlap is asked only once each of them is sound by itself.
        return faults.Length > 0 ? faults : Overlaps(windows, file);
    }

    private static IEnumerable<InputFault> Alone(PressMaintenance window, string file, string path, IReadOnlyCollection<string>? pressIds)
    {
        int minutes = Minutes(window);
        if (string.IsNullOrWhiteSpace(window.What))
            yield return new(file, null, path + "/what", "nothing", "what is done");
        if (pressIds is not null && !pressIds.Contains(window.PressId))
            yield return new(file, null, path + "/pressId", window.PressId, "one of " + string.Join(", ", pressIds));
        if (minutes <= 0)
            yield return new(file, null, path + "/end", Invariant($"{window.End:HH:mm}, {(minutes == 0 ? "the start itself" : "before the start")}"), Invariant($"a time after {window.Start:HH:mm}, or endsNextDay"));
        else if (minutes > DayMinutes)
            yield return new(file, null, path + "/end", Invariant($"{window.End:HH:mm} of the next day, {minutes / 60.0:0.##} h"), "at most 24 h");
        if (window.Start.Ticks % TimeSpan.TicksPerMinute != 0 || window.End.Ticks % TimeSpan.TicksPerMinute != 0)
            yield return new(file, null, path + "/start", Invariant($"{window.Start:HH:mm:ss.fff} to {window.End:HH:mm:ss.fff}"), "whole minutes");
        if ((window.Day is null) == (window.Days is null))
            yield return new(file, null, path + "/days", window.Day is null ? "no day" : "a day and days of the week", "day for a window that comes once, or days for one that comes every week");
        if (window.Days is { } days && (days.Count == 0 || days.Distinct().Count() < days.Count))
            yield return new(file, null, path + "/days", days.Count == 0 ? "an empty list" : string.Join(", ", days), "days of the week, at least one, each once");
    }

    // Every window is laid out over the days around those of the other: once for a day, a whole week for those that come again.
    private static IEnumerable<InputFault> Overlaps(IReadOnlyList<PressMaintenance> windows, string file)
    {
        for (int i = 0; i < windows.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (windows[i].PressId == windows[j].PressId && Meet(windows[i], windows[j]))
                    yield return new(file, null, Invariant($"/maintenance/{i}"), Words(windows[i]), Invariant($"hours outside {Words(windows[j])}"));
            }
        }
    }

    private static bool Meet(PressMaintenance one, PressMaintenance other)
    {
        DateOnly first = one.Day ?? other.Day ?? new DateOnly(2026, 11, 23);
        int days = one.Day is null && other.Day is null ? 7 : 1;
        IEnumerable<DateOnly> own = Enumerable.Range(-1, days + 2).Select(d => first.AddDays(d)).Where(one.StartsOn);
        return own.Any(day => Enumerable.Range(-1, 3).Select(d => day.AddDays(d)).Where(other.StartsOn).Any(d =>
        {
            int apart = ((d.DayNumber - day.DayNumber) * DayMinutes) + StartOf(other) - StartOf(one);
            return apart < Minutes(one) && -apart < Minutes(other);
        }));
    }

    private static int StartOf(PressMaintenance window) => (window.Start.Hour * 60) + window.Start.Minute;

    private static int Minutes(PressMaintenance window) => (window.End.Hour * 60) + window.End.Minute - StartOf(window) + (window.EndsNextDay ? DayMinutes : 0);

    private static string Words(PressMaintenance window) =>
        Invariant($"{window.What}, {(window.Day is { } day ? Invariant($"{day:yyyy-MM-dd}") : string.Join(", ", window.Days ?? []))} {window.Start:HH:mm} to {window.End:HH:mm}{(window.EndsNextDay ? " of the next day" : "")}");
}
