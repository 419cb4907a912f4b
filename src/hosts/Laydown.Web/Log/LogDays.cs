using System.Globalization;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;

namespace Laydown.Web.Log;

/// <summary>Days chosen on pages of the log, as instants by the clock of the shop.</summary>
internal static class LogDays
{
    /// <summary>Start of a day such as <c>2026-11-26</c>; null for anything else.</summary>
    public static DateTimeOffset? Start(string? day, Catalogue catalogue) => Start(Day(day), catalogue);

    /// <summary>End of a day.</summary>
    public static DateTimeOffset? End(string? day, Catalogue catalogue) => Start(Day(day)?.AddDays(1), catalogue);

    private static DateOnly? Day(string? day) =>
        DateOnly.TryParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly read) && read.Year is > 1 and < 9000 ? read : null;

    private static DateTimeOffset? Start(DateOnly? day, Catalogue catalogue) =>
        day is { } told ? ShopTimes.Read(told.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), catalogue) : null;
}
