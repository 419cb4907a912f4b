using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown run show ID</c> and <c>laydown run make ID</c>.</summary>
internal static class RunCommand
{
    public static Command Make(Shared shared)
    {
        Command command = new("run", "Shows or makes one run.");
        command.Subcommands.Add(Sub(shared, "show", "Shows a run with its times, inks and costs.", ShowAsync));
        command.Subcommands.Add(RunDotsCommand.Make(shared));
        command.Subcommands.Add(RunReleaseCommand.Make(shared));
        command.Subcommands.Add(RunFirstPieceCommand.Make(shared));
        command.Subcommands.Add(RunModeCommand.Make(shared));
        command.Subcommands.Add(Week.RunPressCommand.Make(shared));
        command.Subcommands.Add(RunSheetCommand.Make(shared));
        command.Subcommands.Add(RunLookCommand.Make(shared));
        command.Subcommands.Add(RunCompareCommand.Make(shared));
        command.Subcommands.Add(Sub(shared, "make", "Makes press files and papers of a run; complete or absent.", MakeAsync));
        foreach (Command layout in RunLayoutCommands.Make(shared))
            command.Subcommands.Add(layout);
        return command;
    }

    private static Command Sub(
        Shared shared, string name, string what, Func<ShopServices, Answer, string, CancellationToken, Task<int>> action)
    {
        Argument<string> id = new("id") { Description = "Id of the run, such as R-20261126-01." };
        Command command = new(name, what) { id };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed, (shop, answer) => action(shop, answer, parsed.GetRequiredValue(id), cancellation), cancellation));
        return command;
    }

    private static async Task<int> ShowAsync(ShopServices shop, Answer answer, string id, CancellationToken cancellation)
    {
        RunRecord? run = await shop.Store.RunAsync(id, cancellation);
        if (run is null)
            return answer.Fail(ExitCodes.Refused, Invariant($"Run {id}: found none of that id; wanted one of laydown runs."), []);
        await ShowAsync(shop, answer, run, cancellation);
        return ExitCodes.Done;
    }

    private static async Task<int> MakeAsync(ShopServices shop, Answer answer, string id, CancellationToken cancellation)
    {
        Reading<RunRecord> made = await Told.WhileAsync(answer, shop.Progress, _ => shop.MakeRun.MakeAsync(id, cancellation), cancellation);
        if (!made.IsTaken)
            return answer.Fail(Environments.CodeFor(made.Faults), Invariant($"Run {id} could not be made; nothing of it is left."), made.Faults);
        await ShowAsync(shop, answer, made.Value, cancellation);
        return ExitCodes.Done;
    }

    internal static async Task ShowAsync(ShopServices shop, Answer answer, RunRecord run, CancellationToken cancellation)
    {
        string runs = new ShopFolder(shop.Folder).Runs;
        if (answer.AsJson)
            answer.Json("run", new { folder = run.FolderName is null ? null : Path.Combine(runs, run.FolderName), run, refusals = await shop.Release.RefusalsAsync(run.Run, cancellation) });
        else
            RunWords.Show(answer, run, runs, await shop.Release.RefusalsAsync(run.Run, cancellation));
    }
}
