using System.CommandLine;
using Laydown.Cli.Layout;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Layout;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown run release ID</c>, <c>run take-back ID</c> and <c>run layout ID</c>.</summary>
internal static class RunLayoutCommands
{
    public static IEnumerable<Command> Make(Shared shared)
    {
        yield return Named(shared, "release", "Releases the layout of a run: it is not changed any more.", (shop, id, by, at, cancellation) => ReleaseAsync(shop, id, by, at, cancellation));
        yield return Named(shared, "take-back", "Takes the release of a layout back.", (shop, id, by, at, _) => shop.Layouts.Release.TakeBackAsync(id, by, at));
        yield return Export(shared);
    }

    private static Command Named(
        Shared shared, string name, string what, Func<ShopServices, string, string, DateTimeOffset, CancellationToken, Task<Reading<RunRecord>>> change)
    {
        Argument<string> id = new("id") { Description = "Id of the run, such as R-20261126-01." };
        Option<string> by = new("--by") { Description = "Name of the one who stands for it.", Required = true };
        Command command = new(name, what) { id, by };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) => Told(
                answer, parsed.GetRequiredValue(id), await change(shop, parsed.GetRequiredValue(id), parsed.GetRequiredValue(by), shared.Now(parsed), cancellation)),
            cancellation));
        return command;
    }

    private static async Task<Reading<RunRecord>> ReleaseAsync(ShopServices shop, string id, string by, DateTimeOffset at, CancellationToken cancellation)
    {
        Reading<OpenedLayout> opened = await shop.Layouts.Open.OpenAsync(id, cancellation);
        return opened.IsTaken
            ? await shop.Layouts.Release.ReleaseAsync(id, opened.Value.Mark, by, at, cancellation)
            : Reading.Refused<RunRecord>(opened.Faults);
    }

    private static int Told(Answer answer, string id, Reading<RunRecord> changed)
    {
        if (!changed.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"Run {id} stays as it was."), changed.Faults);
        if (answer.AsJson)
            answer.Json("layout-release", new { runId = id, changed.Value.Release });
        else
            answer.Line(Invariant($"{id}  {changed.Value.Release}"));
        return ExitCodes.Done;
    }

    private static Command Export(Shared shared)
    {
        Argument<string> id = new("id") { Description = "Id of the run, such as R-20261126-01." };
        LayoutOptions options = new();
        Command command = new("layout", "Writes the layout of a run as JSON and as SVG, DXF and PDF cut paths.") { id, options.Out, options.Formats };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed, (shop, answer) => ExportAsync(shop, answer, parsed, parsed.GetRequiredValue(id), options, shared.Now(parsed), cancellation), cancellation));
        return command;
    }

    private static async Task<int> ExportAsync(
        ShopServices shop, Answer answer, ParseResult parsed, string id, LayoutOptions options, DateTimeOffset made, CancellationToken cancellation)
    {
        if (options.FormatsOf(parsed) is not { } formats)
            return answer.Fail(ExitCodes.BadUsage, Invariant($"--formats: found {parsed.GetValue(options.Formats)}; wanted some of json, svg, dxf, pdf."), []);
        string folder = options.FolderOf(parsed, Path.GetFullPath(id));
        Reading<IReadOnlyList<string>> written = (await shop.Layouts.Open.OpenAsync(id, cancellation)).Then(
            o => new ExportLayout(Wiring.LayoutWriter()).Write(RunJob.Of(o), Invariant($"run {id}"), folder, formats, made));
        if (!written.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"The layout of run {id} cannot be written."), written.Faults);
        if (answer.AsJson)
            answer.Json("layout-exported", new { folder, files = written.Value });
        else
            answer.Line(Invariant($"{folder}: {string.Join(", ", written.Value)}"));
        return ExitCodes.Done;
    }
}
