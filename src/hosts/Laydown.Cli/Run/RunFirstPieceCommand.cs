using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown run first-piece ID</c>: shows the checks of the first piece, or signs it off.</summary>
internal static class RunFirstPieceCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> id = new("id") { Description = "Id of the run, such as R-20261126-01." };
        Option<int[]> made = new("--made") { Description = "Numbers of the checks that were made and were good.", AllowMultipleArgumentsPerToken = true };
        Option<string?> by = new("--by") { Description = "Who approves the first piece; without it the checks are shown." };
        Option<string?> notes = new("--notes") { Description = "What is worth knowing the next time." };
        Command command = new("first-piece", "Shows what is checked on the first piece; signs it off on request.") { id, made, by, notes };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) => parsed.GetValue(by) is { } name
                ? ApproveAsync(shop, answer, parsed.GetRequiredValue(id), new(parsed.GetValue(made) ?? [], name, parsed.GetValue(notes)), cancellation)
                : ShowAsync(shop, answer, parsed.GetRequiredValue(id), cancellation),
            cancellation));
        return command;
    }

    private static async Task<int> ApproveAsync(ShopServices shop, Answer answer, string id, FirstPieceApproval approval, CancellationToken cancellation)
    {
        if (shop.FirstPiece is null)
            return answer.Fail(ExitCodes.Refused, "Found no log; wanted a shop that keeps one.", []);
        Reading<ApprovedPiece> done = await shop.FirstPiece.ApproveAsync(id, approval, cancellation);
        if (!done.IsTaken)
            return answer.Fail(Environments.CodeFor(done.Faults), Invariant($"The first piece of run {id} is not signed off."), done.Faults);
        if (answer.AsJson)
            answer.Json("first-piece", done.Value);
        else
            answer.Line(Invariant($"Run {id}, by {done.Value.By}: {done.Value.Words}"));
        return ExitCodes.Done;
    }

    private static async Task<int> ShowAsync(ShopServices shop, Answer answer, string id, CancellationToken cancellation)
    {
        RunRecord? run = await shop.Store.RunAsync(id, cancellation);
        if (run is null)
            return answer.Fail(ExitCodes.Refused, Invariant($"Run {id}: found none of that id; wanted one of laydown runs."), []);
        ApprovedPiece? approved = shop.FirstPiece is { } first ? await first.OfAsync(run, cancellation) : null;
        if (answer.AsJson)
        {
            answer.Json("first-piece-checks", new { runId = id, checks = run.Run.SetUp.FirstPieceChecks, cautions = run.Run.SetUp.Cautions, approved });
            return ExitCodes.Done;
        }

        foreach ((int i, string check) in run.Run.SetUp.FirstPieceChecks.Index())
            answer.Line(Invariant($"{i + 1}  {check}"));
        foreach (string caution in run.Run.SetUp.Cautions)
            answer.Line("caution: " + caution);
        answer.Line(approved is null ? "Not signed off." : Invariant($"{approved.At:yyyy-MM-dd HH:mm}, {approved.By}: {approved.Words}"));
        return ExitCodes.Done;
    }
}
