using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Shop;
using Laydown.Shop.Log;

namespace Laydown.Cli.Log;

/// <summary>Options for a part of the log: press, from, to.</summary>
internal sealed class SpanOptions
{
    private readonly Option<string?> press = new("--press") { Description = "One press only." };
    private readonly Option<string?> from = new("--from") { Description = "From this day or time." };
    private readonly Option<string?> to = new("--to") { Description = "Before this day or time." };

    /// <summary>Adds them to a command and hands the part on to its work.</summary>
    public Command On(
        Command command, Shared shared, Func<ParseResult, ShopServices, Answer, LogSpan, CancellationToken, Task<int>> work)
    {
        command.Options.Add(press);
        command.Options.Add(from);
        command.Options.Add(to);
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) => !TryTime(parsed.GetValue(from), shop, out DateTimeOffset? start) || !TryTime(parsed.GetValue(to), shop, out DateTimeOffset? end)
                ? Task.FromResult(answer.Fail(ExitCodes.BadUsage, "--from, --to: wanted a day such as 2026-11-26 or a time such as 2026-11-26T09:30+01:00.", []))
                : LogSpans.Of(parsed.GetValue(press), start, end).Match(
                    span => work(parsed, shop, answer, span, cancellation), faults => Task.FromResult(answer.Fail(ExitCodes.BadUsage, "Nothing is shown.", faults))),
            cancellation));
        return command;
    }

    private static bool TryTime(string? text, ShopServices shop, out DateTimeOffset? when)
    {
        when = ShopTimes.Read(text, shop.Catalogue);
        return text is null || when is not null;
    }
}
