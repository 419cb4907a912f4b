using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Colour.Spaces;
using Laydown.Measures;
using Laydown.Shop.Colour;

namespace Laydown.Cli.Colour;

/// <summary>Verbs that put lists of numbers through a model: <c>predict</c>, <c>separate</c>, <c>score</c>; with <c>--fit</c> they need no shop.</summary>
internal static class NumbersCommands
{
    public static Command Predict(Shared shared)
    {
        ColourOptions options = new();
        Command command = new("predict", "Colours of mixtures: CSV with a column for each ink in percent gives L, a, b.") { options.File, options.Fit, options.Condition, options.Out };
        command.SetAction((parsed, cancellation) => WithModelAsync(shared, parsed, options, async (answer, files, print, _) =>
        {
            Reading<IReadOnlyList<PredictedColour>> all = new PredictColours(files).Predict(print, FileOf(parsed, options));
            return all.IsTaken
                ? await EndAsync(answer, parsed.GetValue(options.Out), "predicted", new { model = print.Name, inks = print.InkNames, colours = all.Value },
                    ["id", .. print.InkNames, "L", "a", "b"], all.Value.Select(c => (IReadOnlyList<string>)[c.Name, .. Percent(c.Inks), .. Three(c.Lab)]), cancellation)
                : Refused(answer, parsed, options, all.Faults);
        }, cancellation));
        return command;
    }

    public static Command Separate(Shared shared)
    {
        ColourOptions options = new();
        Command command = new("separate", "Inks for colours: CSV with columns L, a, b gives inks, prediction, dE00 and whether it can be printed.")
        {
            options.File, options.Fit, options.Condition, options.Out, options.Total, options.Limits, options.Black, options.BlackStart, options.BlackWidth, options.Relative,
        };
        command.SetAction((parsed, cancellation) => WithModelAsync(shared, parsed, options, async (answer, files, print, asKept) =>
        {
            (SeparationWish wish, string? fault) = options.Wish(parsed);
            if (fault is not null)
                return answer.Fail(ExitCodes.BadUsage, fault, []);
            Reading<IReadOnlyList<SeparatedColour>> all = await new SeparateColours(files).SeparateAsync(
                print, FileOf(parsed, options), asKept(wish), parsed.GetValue(options.Relative), new Share(answer, "separate"), cancellation);
            return all.IsTaken
                ? await EndAsync(answer, parsed.GetValue(options.Out), "separated", new { model = print.Name, inks = print.InkNames, colours = all.Value },
                    ["id", "L", "a", "b", .. print.InkNames, "predicted L", "predicted a", "predicted b", "dE00", "in gamut"], all.Value.Select(Row), cancellation)
                : Refused(answer, parsed, options, all.Faults);
        }, cancellation));
        return command;
    }

    public static Command Score(Shared shared)
    {
        ColourOptions options = new();
        Command command = new("score", "Measured against predicted: readings of any chart with the model's inks.") { options.File, options.Fit, options.Condition, options.Out };
        command.SetAction((parsed, cancellation) => WithModelAsync(shared, parsed, options, async (answer, files, print, _) =>
        {
            Reading<ReadingScore> score = new ScoreReadings(files).Score(print, FileOf(parsed, options));
            if (!score.IsTaken)
                return Refused(answer, parsed, options, score.Faults);
            ReadingScore told = score.Value;
            if (!answer.AsJson)
            {
                answer.Error.WriteLine(Invariant(
                    $"{told.Readings}: {told.DeltaE00.Count} readings, dE00 mean {told.DeltaE00.Mean:0.000}, p95 {told.DeltaE00.P95:0.000}, max {told.DeltaE00.Max:0.000}"));
            }

            return await EndAsync(answer, parsed.GetValue(options.Out), "score", told,
                ["id", .. told.InkNames, "L", "a", "b", "predicted L", "predicted a", "predicted b", "dE00"],
                told.Patches.Select(p => (IReadOnlyList<string>)[p.Id, .. Percent(p.Inks), .. Three(p.Measured), .. Three(p.Predicted), Four(p.DeltaE00)]), cancellation);
        }, cancellation));
        return command;
    }

    /// <summary>Writes a file; null when it stands, else the exit code.</summary>
    public static async Task<int?> WriteAsync(Answer answer, string path, byte[] bytes, CancellationToken cancellation)
    {
        try
        {
            await ColourFile.WriteAsync(path, bytes, cancellation);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return answer.Fail(ExitCodes.Refused, Invariant($"--out: {e.Message} Nothing was written."), []);
        }
    }

    private static async Task<int> WithModelAsync(
        Shared shared, ParseResult parsed, ColourOptions options,
        Func<Answer, IColourFiles, PrintModel, Func<SeparationWish, SeparationWish>, Task<int>> work, CancellationToken cancellation)
    {
        IColourFiles files = Wiring.ColourFiles();
        if (parsed.GetValue(options.Condition) is { } id)
        {
            return await shared.InShopAsync(parsed, async (shop, told) =>
            {
                Reading<ConditionView> view = shop.Colour.ShowCondition.Show(id);
                if (!view.IsTaken || view.Value.Print is not { } kept)
                    return told.Fail(ExitCodes.Refused, Invariant($"{id} has no model: laydown condition fit gives it one."), view.Faults);
                return await work(told, files, kept, wish => SeparationWish.OfCondition(wish, view.Value.Condition, kept));
            }, cancellation);
        }

        await Task.Yield();
        Answer answer = shared.Answer(parsed);
        if (parsed.GetValue(options.Fit) is not { } path)
            return answer.Fail(ExitCodes.BadUsage, "Found no model; wanted --fit FILE or --condition ID.", []);
        Reading<PrintModel> print = FitText.Read(Path.GetFullPath(path));
        return print.IsTaken
            ? await work(answer, files, print.Value, wish => wish)
            : answer.Fail(ExitCodes.Refused, Invariant($"{Path.GetFileName(path)} is no model."), print.Faults);
    }

    private static async Task<int> EndAsync<T>(
        Answer answer, string? target, string schema, T result, IReadOnlyList<string> names, IEnumerable<IReadOnlyList<string>> rows, CancellationToken cancellation)
        where T : notnull
    {
        byte[] csv = ColourFile.Csv(names, rows);
        if (target is not null && await WriteAsync(answer, target, csv, cancellation) is { } code)
            return code;
        if (answer.AsJson)
            answer.Json(schema, result);
        else if (target is null)
            answer.Out.Write(System.Text.Encoding.UTF8.GetString(csv));
        return ExitCodes.Done;
    }

    private static int Refused(Answer answer, ParseResult parsed, ColourOptions options, IReadOnlyList<InputFault> faults) => answer.Fail(
        ExitCodes.Refused, Invariant($"{Path.GetFileName(FileOf(parsed, options))} cannot be taken; nothing was written."), faults);

    private static string FileOf(ParseResult parsed, ColourOptions options) => Path.GetFullPath(parsed.GetRequiredValue(options.File));

    private static IReadOnlyList<string> Row(SeparatedColour colour) =>
        [colour.Name, .. Three(colour.Wanted), .. Percent(colour.Inks), .. Three(colour.Predicted), Four(colour.DeltaE00), colour.InGamut ? "yes" : "no"];

    private static IEnumerable<string> Percent(IEnumerable<double> inks) => inks.Select(i => Invariant($"{i * 100:0.####}"));

    private static IEnumerable<string> Three(Lab lab) => [Four(lab.L), Four(lab.A), Four(lab.B)];

    private static string Four(double value) => Invariant($"{value:0.0000}");
}
