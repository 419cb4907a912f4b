using System.Globalization;
using Laydown.Plan.Calendar;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Log;

/// <summary>Times of the log in the time zone of the shop's calendar; of the machine where the shop keeps none.</summary>
public static class ShopTimes
{
    /// <summary>The same instant by the clock of the shop.</summary>
    public static DateTimeOffset Of(DateTimeOffset instant, Catalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        return catalogue.Calendar is null || instant.Year is < 2000 or > 9000 ? instant : new OpenTimes(catalogue.Calendar).At(instant);
    }

    /// <summary>A day such as <c>2026-11-26</c> (its start) or a time such as <c>2026-11-26T09:30</c>, by the clock of the shop unless it tells its offset; null for anything else.</summary>
    public static DateTimeOffset? Read(string? text, Catalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        if (!DateTime.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out DateTime read) || read.Year is < 2 or > 9000)
            return null;
        if (read.Kind != DateTimeKind.Unspecified)
            return DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTimeOffset told) ? told : null;
        return catalogue.Calendar is { } calendar
            ? new OpenTimes(calendar).At(DateOnly.FromDateTime(read), TimeOnly.FromDateTime(read)) : new DateTimeOffset(DateTime.SpecifyKind(read, DateTimeKind.Local));
    }
}
