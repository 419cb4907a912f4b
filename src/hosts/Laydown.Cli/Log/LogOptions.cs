using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Plan.StockRoom;
using Laydown.Shop;
using Laydown.Shop.Log;

namespace Laydown.Cli.Log;

/// <summary>What the commands that write into the log share.</summary>
/// <param name="shared">What all commands share.</param>
internal sealed class LogOptions(Shared shared)
{
    private readonly Argument<string> run = new("run") { Description = "Id of the run." };
    private readonly Option<string?> ofRun = new("--run") { Description = "Id of the run it belongs to." };
    private readonly Option<string?> press = new("--press") { Description = "The press, where it belongs to no run." };
    private readonly Option<string?> at = new("--at") { Description = "When it happened, such as 2026-11-26T09:30+01:00; now without." };
    private readonly Option<string> by = new("--by") { Description = "Who tells.", DefaultValueFactory = _ => "" };
    private readonly Option<string?> note = new("--note") { Description = "Words." };

    /// <summary>A command about a run.</summary>
    public Command Command(string name, string what, LogKind kind, Func<ParseResult, LogEntry, LogEntry> told) =>
        Common(new(name, what) { run }, kind, parsed => parsed.GetRequiredValue(run), told);

    /// <summary>A command about an entry alone.</summary>
    public Command PlainCommand(string name, string what, LogKind kind, Func<ParseResult, LogEntry, LogEntry> told) =>
        Common(new(name, what), kind, _ => null, told);

    /// <summary>A command about a press, with a run or without.</summary>
    public Command PressCommand(string name, string what, LogKind kind, IReadOnlyList<Argument> arguments, Func<ParseResult, LogEntry, LogEntry> told)
    {
        Command command = new(name, what) { ofRun, press };
        foreach (Argument argument in arguments)
            command.Arguments.Add(argument);
        return Common(command, kind, parsed => parsed.GetValue(ofRun), told);
    }

    private Command Common(Command command, LogKind kind, Func<ParseResult, string?> runOf, Func<ParseResult, LogEntry, LogEntry> told)
    {
        command.Options.Add(at);
        command.Options.Add(by);
        command.Options.Add(note);
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                if (!TryTime(parsed.GetValue(at), shop, out DateTimeOffset when))
                    return answer.Fail(ExitCodes.BadUsage, "--at: wanted a time such as 2026-11-26T09:30+01:00.", []);
                string pressId = parsed.GetValue(press) ?? (shop.Catalogue.Presses.Count == 1 ? shop.Catalogue.Presses[0].Id : "");
                LogEntry entry = new(0, when, kind, runOf(parsed), pressId, parsed.GetValue(by) ?? "", parsed.GetValue(note));
                return await KeepAsync(shop, answer, told(parsed, entry), cancellation);
            },
            cancellation));
        return command;
    }

    /// <summary>Keeps an entry and tells it.</summary>
    public static async Task<int> KeepAsync(ShopServices shop, Answer answer, LogEntry entry, CancellationToken cancellation)
    {
        Reading<LogEntry> kept = await shop.Log!.Keep.KeepAsync(entry, cancellation);
        if (!kept.IsTaken)
            return answer.Fail(ExitCodes.Refused, "Not taken into the log.", kept.Faults);
        if (answer.AsJson)
        {
            answer.Json("log-entry", kept.Value);
            return ExitCodes.Done;
        }

        answer.Line(Invariant($"{kept.Value.Number}  {LogWords.Line(kept.Value)}"));
        if (kept.Value is { Actual: not null, RunId: { } id } && shop.Log.Use is { } use && await shop.Store.RunAsync(id, cancellation) is { } record)
            foreach (RunStockLine line in await use.OfRunAsync(record.Run, cancellation))
                answer.Line(LogWords.Of(line));
        return ExitCodes.Done;
    }

    private static bool TryTime(string? text, ShopServices shop, out DateTimeOffset when)
    {
        when = ShopTimes.Read(text, shop.Catalogue) ?? default;
        return text is null || when != default;
    }
}
