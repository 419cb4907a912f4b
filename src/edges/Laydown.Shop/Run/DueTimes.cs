using System.Globalization;
using Laydown.Plan.Calendar;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>How long a press is worked until a run is due.</summary>
internal static class DueTimes
{
    /// <summary>Minutes from the day a run was planned on, whole, to the end of its due day; null where the shop has no calendar. The day is that of the run's id, so that planning anew tells the same.</summary>
    public static double? MinutesLeft(Catalogue catalogue, string runId, string pressId, DateOnly due)
    {
        if (catalogue.Calendar is not { } calendar || runId.Length < 10 ||
            !DateOnly.TryParseExact(runId.AsSpan(2, 8), "yyyyMMdd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
            return null;
        OpenTimes times = new(calendar);
        DateOnly last = due.DayNumber - day.DayNumber > OpenTimes.MostDays - 2 ? day.AddDays(OpenTimes.MostDays - 2) : due;
        return times.Between(times.At(day, TimeOnly.MinValue), times.At(last.AddDays(1), TimeOnly.MinValue), pressId).Sum(s => (s.End - s.Start).TotalMinutes);
    }
}
