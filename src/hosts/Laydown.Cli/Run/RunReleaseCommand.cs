using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown run let-go ID</c>: lets a run go to the press once two people measured its sheet.</summary>
internal static class RunReleaseCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> id = new("id") { Description = "Id of the run, such as R-20261126-01." };
        Option<double[]> thickness = new("--thickness") { Description = "Thickness measured, mm: four corners and the middle of a board, three places across a roll.", AllowMultipleArgumentsPerToken = true };
        Option<double?> edge = new("--edge") { Description = "Highest edge or corner over the table under a straight edge, mm." };
        Option<string> by = new("--by") { Description = "Who measured.", DefaultValueFactory = _ => "" };
        Option<double> highest = new("--checked") { Description = "Highest thickness that the second person found, mm." };
        Option<string> checkedBy = new("--checked-by") { Description = "Who checked; a second person.", DefaultValueFactory = _ => "" };
        Option<bool> seen = new("--seen") { Description = "What must be seen of the edges is watched." };
        Option<bool> back = new("--take-back") { Description = "Takes that back; the sheet must be measured again." };
        Command command = new("let-go", "Lets a run go to the press; the head height follows the highest point measured.") { id, thickness, edge, by, highest, checkedBy, seen, back };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) => ActAsync(shop, answer, parsed.GetRequiredValue(id), parsed.GetValue(back) ? null : new(
                parsed.GetValue(thickness) ?? [], parsed.GetValue(edge) ?? double.NaN, parsed.GetValue(by) ?? "", parsed.GetValue(checkedBy) ?? "",
                parsed.GetValue(highest), parsed.GetValue(seen)), cancellation),
            cancellation));
        return command;
    }

    private static async Task<int> ActAsync(ShopServices shop, Answer answer, string id, MeasuredSheet? measured, CancellationToken cancellation)
    {
        Reading<RunRecord> done = measured is null
            ? await shop.Release.TakeBackAsync(id, cancellation)
            : await shop.Release.ReleaseAsync(id, measured, cancellation);
        if (!done.IsTaken)
            return answer.Fail(Environments.CodeFor(done.Faults), Invariant($"Run {id} was not {(measured is null ? "taken back" : "let go")}; nothing was changed."), done.Faults);
        if (answer.AsJson)
            answer.Json("let-go", new { runId = id, release = done.Value.LetGo });
        else if (done.Value.LetGo is { } release)
            answer.Line(Invariant($"Run {id} may go to the press. Set the heads to {release.HeadGap.Mm:0.0} mm over the belt: {release.Figures[0].Because}. {Cautions.Rule}"));
        else
            answer.Line(Invariant($"Run {id} may no longer go to the press; measure again."));
        return ExitCodes.Done;
    }
}
