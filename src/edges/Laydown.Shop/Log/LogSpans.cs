using System.Globalization;
using Laydown.Measures;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Log;

/// <summary>Parts of the log as they are asked for. One that ends before it begins is refused: it would be shown as a time in which nothing happened.</summary>
public static class LogSpans
{
    /// <summary>A part between two instants.</summary>
    /// <param name="press">One press; null or empty for all.</param>
    /// <param name="from">From this instant; null for the beginning.</param>
    /// <param name="to">Before this instant; null for the end.</param>
    public static Reading<LogSpan> Of(string? press, DateTimeOffset? from, DateTimeOffset? to) => from is { } start && to is { } end && end <= start
        ? Reading.Refused<LogSpan>(new InputFault("log", null, "to", Invariant($"{end:yyyy-MM-dd HH:mm}"), Invariant($"after the start, {start:yyyy-MM-dd HH:mm}")))
        : Reading.Of(new LogSpan(string.IsNullOrEmpty(press) ? null : press, from, to));

    /// <summary>A part as it is asked for on pages, as options and over HTTP: days, both within it, or times, by the clock of the shop.</summary>
    /// <param name="press">One press; null or empty for all.</param>
    /// <param name="from">First day, such as <c>2026-11-26</c>, or from a time, such as <c>2026-11-26T09:30</c>; null or empty for the beginning.</param>
    /// <param name="to">Last day, which is contained, or before a time; null or empty for the end.</param>
    /// <param name="catalogue">Tells the time zone of the shop.</param>
    public static Reading<LogSpan> Of(string? press, string? from, string? to, Catalogue catalogue)
    {
        (DateOnly? first, DateOnly? last) = (Day(from), Day(to));
        if (last < first)
            return Reading.Refused<LogSpan>(new InputFault("log", null, "to", Invariant($"{last:yyyy-MM-dd}"), Invariant($"{first:yyyy-MM-dd}, the first day, or later")));
        (DateTimeOffset? start, DateTimeOffset? end) = (Start(first, catalogue) ?? Time(from, catalogue), Start(last?.AddDays(1), catalogue) ?? Time(to, catalogue));
        InputFault[] faults = [.. new[] { (Field: "from", Text: from, Read: start), (Field: "to", Text: to, Read: end) }.Where(t => t.Read is null && !string.IsNullOrEmpty(t.Text))
            .Select(t => new InputFault("log", null, t.Field, t.Text!, "a day such as 2026-11-26 or a time such as 2026-11-26T09:30"))];
        return faults.Length > 0 ? Reading.Refused<LogSpan>(faults) : Of(press, start, end);
    }

    private static DateOnly? Day(string? day) =>
        DateOnly.TryParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly read) && read.Year is > 1 and < 9000 ? read : null;

    private static DateTimeOffset? Time(string? time, Catalogue catalogue) => time?.Contains(':', StringComparison.Ordinal) == true ? ShopTimes.Read(time, catalogue) : null;

    private static DateTimeOffset? Start(DateOnly? day, Catalogue catalogue) =>
        day is { } told ? ShopTimes.Read(told.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), catalogue) : null;
}
