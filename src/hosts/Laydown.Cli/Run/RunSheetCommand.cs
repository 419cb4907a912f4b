using System.CommandLine;
using Laydown.Measures;

namespace Laydown.Cli.Run;

/// <summary><c>laydown run sheet ID --out FILE</c>: the set-up sheet as it stands now.</summary>
internal static class RunSheetCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> id = new("id") { Description = "Id of the run, such as R-20261126-01." };
        Option<string> file = new("--out") { Description = "Where the PDF goes.", Required = true };
        Command command = new("sheet", "Writes the set-up sheet as A4 PDF: with what was measured and let go, or a form for it.") { id, file };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                Reading<string> made = await shop.SetUpPaper.WriteAsync(parsed.GetRequiredValue(id), Path.GetFullPath(parsed.GetRequiredValue(file)), cancellation);
                if (!made.IsTaken)
                    return answer.Fail(ExitCodes.Refused, "No sheet was written.", made.Faults);
                if (answer.AsJson)
                    answer.Json("set-up-sheet", new { file = made.Value });
                else
                    answer.Line(made.Value);
                return ExitCodes.Done;
            },
            cancellation));
        return command;
    }
}
