using System.Globalization;

namespace Laydown.Shop.Log;

/// <summary>Where a page of the log ended.</summary>
/// <param name="AtSeconds">When its last entry happened, seconds since 1970.</param>
/// <param name="Number">The number of that entry.</param>
public sealed record LogCursor(long AtSeconds, long Number)
{
    /// <summary>Reads what <see cref="ToString"/> wrote; null where it is something else.</summary>
    public static LogCursor? Read(string? text) =>
        text?.Split('-') is [{ } at, { } number] && long.TryParse(at, NumberStyles.None, CultureInfo.InvariantCulture, out long seconds)
            && long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out long count) ? new(seconds, count) : null;

    /// <summary>As it stands in an address.</summary>
    public override string ToString() => Invariant($"{AtSeconds}-{Number}");
}
