using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown run mode ID</c>: how every mode stands to a run, and another one taken in place of the one proposed.</summary>
internal static class RunModeCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> id = new("id") { Description = "Id of the run, such as R-20261126-01." };
        Option<string?> take = new("--take") { Description = "Id of the mode to take in place of the one proposed; says by whom and why." };
        Option<string> by = new("--by") { Description = "Who takes it.", DefaultValueFactory = _ => "" };
        Option<string> reason = new("--reason") { Description = "Why; kept with the run and printed on its sheet.", DefaultValueFactory = _ => "" };
        Option<bool> own = new("--as-proposed") { Description = "Goes back to the mode the shop's own rules pick." };
        Command command = new("mode", "Shows how every mode stands to a run; takes another one on request.") { id, take, by, reason, own };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) => parsed.GetValue(take) is { } mode
                ? ChooseAsync(shop, answer, parsed.GetRequiredValue(id), new(mode, parsed.GetValue(by) ?? "", parsed.GetValue(reason) ?? ""), cancellation)
                : parsed.GetValue(own)
                ? ChooseAsync(shop, answer, parsed.GetRequiredValue(id), null, cancellation)
                : ShowAsync(shop, answer, parsed.GetRequiredValue(id), cancellation),
            cancellation));
        return command;
    }

    private static async Task<int> ChooseAsync(ShopServices shop, Answer answer, string id, ModeOverrule? overrule, CancellationToken cancellation)
    {
        Reading<RunRecord> done = await shop.ChooseMode.ChooseAsync(id, overrule, cancellation);
        if (!done.IsTaken)
            return answer.Fail(Environments.CodeFor(done.Faults), Invariant($"The mode of run {id} stays as it is."), done.Faults);
        await RunCommand.ShowAsync(shop, answer, done.Value, cancellation);
        return ExitCodes.Done;
    }

    private static async Task<int> ShowAsync(ShopServices shop, Answer answer, string id, CancellationToken cancellation)
    {
        RunRecord? run = await shop.Store.RunAsync(id, cancellation);
        if (run is null)
            return answer.Fail(ExitCodes.Refused, Invariant($"Run {id}: found none of that id; wanted one of laydown runs."), []);
        ModeChoice choice = run.Run.Mode;
        if (answer.AsJson)
        {
            answer.Json("mode", choice);
            return ExitCodes.Done;
        }

        answer.Table(["mode", "about", "standing", "said"], choice.Scores.SelectMany(s => s.Points.Select(p => (IReadOnlyList<string>)
            [s.ModeId, p.About, p.Standing switch { ModeStanding.Borne => "borne", ModeStanding.Coarse => "coarse", _ => "out" }, p.Said])));
        answer.Line(Invariant($"Taken: {choice.ModeId}; next: {choice.RunnerUpId ?? "none"}. {string.Join(" ", choice.Reasons)}"));
        return ExitCodes.Done;
    }
}
