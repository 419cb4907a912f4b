using System.CommandLine;
using Laydown.Cli.Check;
using Laydown.Cli.Colour;
using Laydown.Cli.Layers;
using Laydown.Cli.Layout;
using Laydown.Cli.Log;
using Laydown.Cli.Orders;
using Laydown.Cli.Press;
using Laydown.Cli.Proof;
using Laydown.Cli.Run;
using Laydown.Cli.Week;
using Laydown.Cli.Words;
using Laydown.Measures;

namespace Laydown.Cli;

/// <summary>The command line: <c>laydown &lt;verb&gt; … [--json]</c>.</summary>
public static class CommandLine
{
    /// <summary>Runs one command.</summary>
    /// <param name="arguments">What was typed after the program's name.</param>
    /// <param name="output">Where results go.</param>
    /// <param name="error">Where progress and complaints go.</param>
    /// <param name="cancellation">Cancels as Ctrl-C does.</param>
    /// <returns>An exit code of <see cref="ExitCodes"/>.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> arguments, TextWriter output, TextWriter error, CancellationToken cancellation)
    {
        Shared shared = new(output, error);
        ParseResult parsed = Root(shared).Parse(arguments);
        Answer answer = shared.Answer(parsed);
        if (parsed.Errors.Count > 0)
        {
            return answer.Fail(
                ExitCodes.BadUsage, Invariant($"laydown: {string.Join(' ', parsed.Errors.Select(e => e.Message))} See laydown --help."), []);
        }

        try
        {
            // A run being made may need a while to take its half-made folder away after Ctrl-C.
            InvocationConfiguration how = new()
            {
                Output = output,
                Error = error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = TimeSpan.FromSeconds(60),
            };
            int code = await parsed.InvokeAsync(how, cancellation);
            // After Ctrl-C either this code comes back or the exception comes through; both are told alike.
            return code == ExitCodes.Cancelled ? Cancelled(answer) : code;
        }
        catch (OperationCanceledException)
        {
            return Cancelled(answer);
        }
        catch (Exception failure)
        {
            return answer.Fail(ExitCodes.Internal, Invariant($"laydown: a fault of the program: {failure}"), Array.Empty<InputFault>());
        }
    }

    private static int Cancelled(Answer answer) =>
        answer.Fail(ExitCodes.Cancelled, "Cancelled. What was done before is kept; nothing is left half-written.", []);

    private static RootCommand Root(Shared shared)
    {
        RootCommand root = new("Laydown: from a folder of orders to press-ready runs.");
        root.Options.Add(shared.Shop);
        root.Options.Add(shared.AsJson);
        root.Options.Add(shared.Today);
        Command[] commands =
        [
            DemoCommand.Make(shared), OrdersCommand.Make(shared), CheckCommand.Make(shared), PlanCommand.Make(shared), RunsCommand.Make(shared),
            RunCommand.Make(shared), PassesCommand.Make(shared), QuoteCommand.Make(shared), DayCommand.Make(shared), ServeCommand.Make(shared),
            ConditionCommand.Make(shared), ChartCommand.Make(shared), ReadingsCommands.Make(shared), OpticsCommand.Make(shared),
            NamedCommand.Make(shared), ItemCommand.Make(shared), LookCommand.Make(shared), PanelCommand.Make(shared), ProofCommand.Make(shared),
            LayoutCommand.Make(shared), WeekCommand.Make(shared), UpkeepCommand.Make(shared), StockCommand.Make(shared), LogCommand.Make(shared), MeasureFilesCommand.Make(),
        ];
        foreach (Command command in commands)
            root.Subcommands.Add(command);
        PlainNumbers.Ask(root);
        return root;
    }
}
