using System.Globalization;

namespace Laydown.Web.Log;

/// <summary>Days chosen on pages of the log, as instants by the machine's own clock.</summary>
internal static class LogDays
{
    /// <summary>Start of a day such as <c>2026-11-26</c>; null for anything else.</summary>
    public static DateTimeOffset? Start(string? day) =>
        DateOnly.TryParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly read) && read.Year is > 1 and < 9999
            ? new DateTimeOffset(read.ToDateTime(TimeOnly.MinValue, DateTimeKind.Local)) : null;

    /// <summary>End of a day.</summary>
    public static DateTimeOffset? End(string? day) => Start(day)?.AddDays(1);
}
