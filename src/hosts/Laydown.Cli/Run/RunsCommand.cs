using System.CommandLine;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown runs</c>: lists runs.</summary>
internal static class RunsCommand
{
    public static Command Make(Shared shared)
    {
        Command command = new("runs", "Lists all runs.");
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                IReadOnlyList<RunRecord> runs = await shop.Store.RunsAsync(cancellation);
                if (answer.AsJson)
                    answer.Json("runs", new { runs });
                else
                    RunWords.Table(answer, runs);
                return ExitCodes.Done;
            },
            cancellation));
        return command;
    }
}
