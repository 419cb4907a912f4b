using System.CommandLine;
using Laydown.Cli.Words;

namespace Laydown.Cli.Orders;

/// <summary><c>laydown demo</c>: writes the demo shop.</summary>
internal static class DemoCommand
{
    public static Command Make(Shared shared)
    {
        Command command = new("demo", "Writes an invented shop with a week's orders to look at.");
        command.SetAction(async (parsed, cancellation) =>
        {
            await Task.Yield();
            Answer answer = shared.Answer(parsed);
            if (shared.DayOf(parsed) is not { } today)
                return answer.Fail(ExitCodes.BadUsage, "--today: wanted a day such as 2026-11-25.", []);
            string folder = Path.GetFullPath(parsed.GetValue(shared.Shop) ?? "");
            Demo.DemoWorld.Write(folder, today, cancellation);
            if (answer.AsJson)
                answer.Json("demo", new { folder });
            else
                answer.Line(folder);
            return ExitCodes.Done;
        });
        return command;
    }
}
