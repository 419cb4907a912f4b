using System.CommandLine;
using System.Globalization;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop;

namespace Laydown.Cli;

/// <summary>What all commands share: options, the way to answer, the way into a shop.</summary>
/// <param name="output">Where results go.</param>
/// <param name="error">Where progress and complaints go.</param>
internal sealed class Shared(TextWriter output, TextWriter error)
{
    /// <summary>Folder of the shop.</summary>
    public Option<string> Shop { get; } = new("--shop")
    {
        Description = "Folder of the shop.",
        DefaultValueFactory = _ => Path.Combine(".laydown", "shop"),
        Recursive = true,
    };

    /// <summary>JSON instead of words.</summary>
    public Option<bool> AsJson { get; } = new("--json")
    {
        Description = "Answer as JSON with schema and version.",
        Recursive = true,
    };

    /// <summary>The day that is worked on.</summary>
    public Option<string?> Today { get; } = new("--today")
    {
        Description = "Work as if it were this day, yyyy-mm-dd.",
        Recursive = true,
    };

    /// <summary>How to answer what was parsed.</summary>
    public Answer Answer(ParseResult parsed) => new(output, error, parsed.GetValue(AsJson));

    /// <summary>Opens the shop and does something in it; faults of the shop itself are told here.</summary>
    public async Task<int> InShopAsync(
        ParseResult parsed, Func<ShopServices, Answer, Task<int>> work, CancellationToken cancellation)
    {
        // The command line waits for a command after Ctrl-C only once its start has returned, and much of the work waits for nothing.
        await Task.Yield();
        Answer answer = Answer(parsed);
        if (ClockOf(parsed) is not { } clock)
            return answer.Fail(ExitCodes.BadUsage, "--today: wanted a day such as 2026-11-25.", []);
        string folder = Path.GetFullPath(parsed.GetValue(Shop) ?? "");
        Reading<ShopServices> shop = await Wiring.OpenAsync(folder, clock, cancellation);
        if (!shop.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"The shop in {folder} cannot be opened."), shop.Faults);
        using (shop.Value.MakeRun)
            return await work(shop.Value, answer);
    }

    /// <summary>The day that is worked on, or null where it cannot be read.</summary>
    public DateOnly? DayOf(ParseResult parsed) => ClockOf(parsed) is { } clock ? DateOnly.FromDateTime(clock.GetLocalNow().Date) : null;

    /// <summary>The instant that is worked at.</summary>
    public DateTimeOffset Now(ParseResult parsed) => (ClockOf(parsed) ?? TimeProvider.System).GetUtcNow();

    private TimeProvider? ClockOf(ParseResult parsed)
    {
        string? day = parsed.GetValue(Today);
        if (day is null)
            return TimeProvider.System;
        return DateOnly.TryParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date)
            ? new ClockOfDay(date)
            : null;
    }

    // The hour runs on; only the day is another.
    private sealed class ClockOfDay(DateOnly day) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow()
        {
            DateTimeOffset now = System.GetUtcNow();
            return now.AddDays(day.DayNumber - DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, LocalTimeZone).Date).DayNumber);
        }
    }
}
