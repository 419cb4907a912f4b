using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Layout.Jobs;
using Laydown.Measures;

namespace Laydown.Cli.Layout;

/// <summary><c>laydown layout check LAYOUT.json</c>.</summary>
internal static class LayoutCheckCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> file = new("layout") { Description = "The layout, JSON as in schemas/layout.schema.json." };
        Command command = new("check", "Checks a layout by its own rules: counts, angles, edges, distances, cuts from edge to edge.") { file };
        command.SetAction((parsed, _) => CheckAsync(shared.Answer(parsed), Path.GetFullPath(parsed.GetRequiredValue(file))));
        return command;
    }

    private static async Task<int> CheckAsync(Answer answer, string path)
    {
        await Task.Yield();
        Reading<JobLayout> read = Wiring.JobReader().Layout(path);
        if (!read.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"{Path.GetFileName(path)} cannot be read as a layout."), read.Faults);
        IReadOnlyList<JobFault> faults = JobChecks.Faults(read.Value);
        if (answer.AsJson)
            answer.Json("layout-check", new { file = path, sound = faults.Count == 0, faults });
        else if (faults.Count == 0)
            answer.Line(Invariant($"{Path.GetFileName(path)} keeps its rules: {LayoutWords.Line(read.Value)}"));
        else
            answer.Table(["where", "found", "wanted"], faults.Select(f => (IReadOnlyList<string>)[f.Field, f.Found, f.Wanted]));
        return faults.Count == 0 ? ExitCodes.Done : ExitCodes.Held;
    }
}
