using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Layout.Jobs;
using Laydown.Measures;

namespace Laydown.Cli.Layout;

/// <summary><c>laydown layout check LAYOUT.json</c>.</summary>
internal static class LayoutCheckCommand
{
    private const string LayoutFile = "layout.json";

    public static Command Make(Shared shared)
    {
        Argument<string> file = new("layout") { Description = "The layout, JSON as in schemas/layout.schema.json, or a folder with layout.json in it." };
        Command command = new("check", "Checks a layout by its own rules: counts, angles, edges, distances, cuts from edge to edge.") { file };
        command.SetAction((parsed, _) => CheckAsync(shared.Answer(parsed), FileOf(Path.GetFullPath(parsed.GetRequiredValue(file)))));
        return command;
    }

    // A folder is as `layout make` writes it: the layout in it is meant.
    private static string FileOf(string path) => Directory.Exists(path) ? Path.Combine(path, LayoutFile) : path;

    private static async Task<int> CheckAsync(Answer answer, string path)
    {
        await Task.Yield();
        Reading<JobLayout> read = Wiring.JobReader().Layout(path);
        if (!read.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"{Path.GetFileName(path)} cannot be read as a layout."), read.Faults);
        IReadOnlyList<JobFault> faults = JobChecks.Faults(read.Value);
        if (answer.AsJson)
            answer.Json("layout-check", new { file = path, sound = faults.Count == 0, faults, sets = faults.Count == 0 ? JobNotes.Spreads(read.Value) : [], notes = faults.Count == 0 ? JobNotes.Of(read.Value) : [] });
        else if (faults.Count == 0)
            Sound(answer, path, read.Value);
        else
            answer.Table(["where", "found", "wanted"], faults.Select(f => (IReadOnlyList<string>)[f.Field, f.Found, f.Wanted]));
        return faults.Count == 0 ? ExitCodes.Done : ExitCodes.Held;
    }

    private static void Sound(Answer answer, string path, JobLayout layout)
    {
        answer.Line(Invariant($"{Path.GetFileName(path)} keeps its rules: {LayoutWords.Line(layout)}"));
        foreach (string note in JobNotes.Spreads(layout).Where(s => !s.IsApart).Select(s => s.ToString()).Concat(JobNotes.Of(layout)))
            answer.Line(note);
    }
}
