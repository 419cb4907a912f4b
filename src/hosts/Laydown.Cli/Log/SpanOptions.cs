using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Shop;
using Laydown.Shop.Log;

namespace Laydown.Cli.Log;

/// <summary>Options for a part of the log: press, from, to.</summary>
internal sealed class SpanOptions
{
    private readonly Option<string?> press = new("--press") { Description = "One press only." };
    private readonly Option<string?> from = new("--from") { Description = "From this day or time, such as 2026-11-26 or 2026-11-26T09:30." };
    private readonly Option<string?> to = new("--to") { Description = "To this day, which is contained, or before this time." };

    /// <summary>Adds them to a command and hands the part on to its work.</summary>
    public Command On(
        Command command, Shared shared, Func<ParseResult, ShopServices, Answer, LogSpan, CancellationToken, Task<int>> work)
    {
        command.Options.Add(press);
        command.Options.Add(from);
        command.Options.Add(to);
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) => LogSpans.Of(parsed.GetValue(press), parsed.GetValue(from), parsed.GetValue(to), shop.Catalogue).Match(
                span => work(parsed, shop, answer, span, cancellation), faults => Task.FromResult(answer.Fail(ExitCodes.BadUsage, "Nothing is shown.", faults))),
            cancellation));
        return command;
    }
}
