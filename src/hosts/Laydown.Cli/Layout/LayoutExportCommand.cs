using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Layout.Jobs;
using Laydown.Measures;
using Laydown.Shop.Layout;

namespace Laydown.Cli.Layout;

/// <summary><c>laydown layout export LAYOUT.json</c>.</summary>
internal static class LayoutExportCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> file = new("layout") { Description = "The layout, JSON as in schemas/layout.schema.json." };
        LayoutOptions options = new();
        Command command = new("export", "Writes a layout as SVG, DXF and PDF cut paths.") { file, options.Out, options.Formats };
        command.SetAction((parsed, _) => ExportAsync(parsed, shared, options, Path.GetFullPath(parsed.GetRequiredValue(file))));
        return command;
    }

    private static async Task<int> ExportAsync(ParseResult parsed, Shared shared, LayoutOptions options, string path)
    {
        await Task.Yield();
        Answer answer = shared.Answer(parsed);
        if (options.FormatsOf(parsed) is not { } formats)
            return answer.Fail(ExitCodes.BadUsage, Invariant($"--formats: found {parsed.GetValue(options.Formats)}; wanted some of json, svg, dxf, pdf."), []);
        Reading<JobLayout> read = Wiring.JobReader().Layout(path);
        if (!read.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"{Path.GetFileName(path)} cannot be read as a layout."), read.Faults);

        // A layout that was changed by hand may have gone wrong: a cutter is not sent along it.
        if (ExportLayout.Broken(read.Value, Path.GetFileName(path)) is { Count: > 0 } faults)
            return answer.Fail(ExitCodes.Held, Invariant($"{Path.GetFileName(path)} breaks its own rules."), faults);

        string folder = options.FolderOf(parsed, path);
        Reading<IReadOnlyList<string>> written = new ExportLayout(Wiring.LayoutWriter()).Write(read.Value, Path.GetFileName(path), folder, formats, shared.Now(parsed));
        if (!written.IsTaken)
            return answer.Fail(ExitCodes.Refused, "The layout cannot be written.", written.Faults);
        if (answer.AsJson)
            answer.Json("layout-exported", new { folder, files = written.Value });
        else
            answer.Line(Invariant($"{folder}: {string.Join(", ", written.Value)}"));
        return ExitCodes.Done;
    }
}
