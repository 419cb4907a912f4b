using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Colour.Fits;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Shop.Colour;

namespace Laydown.Cli.Colour;

/// <summary><c>laydown condition …</c>: print conditions from readings to profile.</summary>
internal static class ConditionCommand
{
    public static Command Make(Shared shared)
    {
        Command command = new("condition", "Print conditions: fitted to readings, made into profiles, used to predict and separate.");
        command.Subcommands.Add(List(shared));
        command.Subcommands.Add(Show(shared));
        command.Subcommands.Add(Fit(shared));
        command.Subcommands.Add(MakeProfile(shared));
        command.Subcommands.Add(NumbersCommands.Predict(shared));
        command.Subcommands.Add(NumbersCommands.Separate(shared));
        command.Subcommands.Add(NumbersCommands.Score(shared));
        command.Subcommands.Add(ReadingsCommands.Calibrate(shared));
        command.Subcommands.Add(ReadingsCommands.Drift(shared));
        return command;
    }

    private static Command List(Shared shared)
    {
        Command command = new("list", "Lists the shop's print conditions with what they rest on.");
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) =>
            {
                IReadOnlyList<PrintCondition> all = shop.Colour.ListConditions.List();
                if (answer.AsJson)
                    answer.Json("conditions", new { conditions = all });
                else
                    answer.Table(["id", "name", "readings", "mean", "p95", "max"], all.Select(Row));
                return Task.FromResult(ExitCodes.Done);
            },
            cancellation));
        return command;
    }

    private static IReadOnlyList<string> Row(PrintCondition condition) => condition.Characterisation is { } kept
        ? [condition.Id, condition.Name, kept.Readings, Two(kept.MeanDeltaE), Two(kept.P95DeltaE), Two(kept.MaxDeltaE)]
        : [condition.Id, condition.Name, "none", "", "", ""];

    private static Command Show(Shared shared)
    {
        Argument<string> id = new("id") { Description = "Id of the print condition." };
        Command command = new("show", "Shows a print condition: limits, model, residuals, later readings.") { id };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed, (shop, answer) => Task.FromResult(Tell(answer, shop.Colour.ShowCondition.Show(parsed.GetRequiredValue(id)), "cannot be shown")), cancellation));
        return command;
    }

    private static Command Fit(Shared shared)
    {
        ColourOptions options = new();
        Command command = new("fit", "Fits a model to the readings of a chart; with --condition it is kept, with --out written, else only told.")
        {
            options.File, options.Condition, options.Out, options.Kind, options.Folds, options.Thorough,
        };
        command.SetAction((parsed, cancellation) => parsed.GetValue(options.Folds) is < 2 or > 20
            ? Task.FromResult(shared.Answer(parsed).Fail(ExitCodes.BadUsage, Invariant($"--folds: found {parsed.GetValue(options.Folds)}; wanted 2 to 20."), []))
            : parsed.GetValue(options.Condition) is { } id
            ? shared.InShopAsync(
                parsed,
                async (shop, answer) => Tell(
                    answer,
                    await shop.Colour.FitCondition.FitAsync(
                        id, Path.GetFullPath(parsed.GetRequiredValue(options.File)), options.Choices(parsed), new Share(answer, "fit"), cancellation),
                    "stays as it was"),
                cancellation)
            : FitFileAsync(parsed, shared.Answer(parsed), options, cancellation));
        return command;
    }

    private static async Task<int> FitFileAsync(ParseResult parsed, Answer answer, ColourOptions options, CancellationToken cancellation)
    {
        await Task.Yield();
        string path = Path.GetFullPath(parsed.GetRequiredValue(options.File));
        Reading<FitOutcome> fit = await new FitReadings(Wiring.ColourFiles()).FitAsync(path, options.Choices(parsed), new Share(answer, "fit"), cancellation);
        if (!fit.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"{Path.GetFileName(path)} carries no model; nothing was written."), fit.Faults);
        string? target = parsed.GetValue(options.Out);
        if (target is not null && await NumbersCommands.WriteAsync(answer, target, FitText.Write(fit.Value.Readings.Name, fit.Value.Print), cancellation) is { } code)
            return code;
        if (answer.AsJson)
            answer.Json("fit-report", new { @out = target, report = fit.Value.Report });
        else
            Tell(answer, fit.Value.Report);
        return ExitCodes.Done;
    }

    private static Command MakeProfile(Shared shared)
    {
        ColourOptions options = new();
        Argument<string> id = new("id") { Description = "Id of a fitted print condition." };
        Command command = new("make", "Makes the profile of a fitted print condition and puts it to use.")
        {
            id, options.Total, options.Limits, options.Black, options.BlackStart, options.BlackWidth, options.Nodes,
        };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                (SeparationWish wish, string? fault) = options.Wish(parsed);
                return fault is not null
                    ? answer.Fail(ExitCodes.BadUsage, fault, [])
                    : Tell(
                        answer,
                        await shop.Colour.MakeCondition.MakeAsync(
                            parsed.GetRequiredValue(id), new(wish, parsed.GetValue(options.Nodes)), new Share(answer, "make"), cancellation),
                        "stays as it was");
            },
            cancellation));
        return command;
    }

    private static int Tell(Answer answer, Reading<ConditionView> view, string otherwise)
    {
        if (!view.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"The print condition {otherwise}."), view.Faults);
        (PrintCondition condition, PrintModel? print, FitReport? report, IReadOnlyList<KeptReading> kept) = view.Value;
        if (answer.AsJson)
        {
            answer.Json("condition", new { condition, model = print is null ? null : new { print.Name, print.Kind, print.InkNames }, report, kept });
            return ExitCodes.Done;
        }

        answer.Line(Invariant($"{condition.Id}  {condition.Name}"));
        answer.Line(Invariant($"profile {condition.Profile}, total {condition.TotalLimitPercent:0.#} %"));
        answer.Table(["ink", "limit"], condition.Inks.Select(i => (IReadOnlyList<string>)[i.Role.ToString(), Invariant($"{i.LimitPercent:0.#} %")]));
        if (report is not null)
            Tell(answer, report);
        foreach (KeptReading reading in kept)
            answer.Line(Invariant($"{reading.Taken:yyyy-MM-dd}  {reading.Name}  mean {reading.Predicted.Mean:0.00}  {ReadingsCommands.Verdict(reading)}"));
        return ExitCodes.Done;
    }

    private static void Tell(Answer answer, FitReport report)
    {
        answer.Line(Invariant($"{report.Readings}: {report.Patches} readings, {string.Join(", ", report.InkNames)}"));
        answer.Line(Invariant($"{report.Kind}, n {report.YuleNielsen:0.##}"));
        answer.Table(["dE00", "patches", "mean", "median", "p95", "max"], [Row("held out", report.CrossValidated), Row("fitted", report.Fitted)]);
        answer.Table(["worst patch", "inks, %", "dE00"], report.Worst.Take(10).Select(p => (IReadOnlyList<string>)
            [p.Id, string.Join(' ', p.Inks.Select(i => Invariant($"{i * 100:0}"))), Two(p.DeltaE00)]));
        foreach (string note in report.Notes)
            answer.Line(note);
    }

    private static IReadOnlyList<string> Row(string name, ResidualSummary residual) =>
        [name, Invariant($"{residual.Count}"), Two(residual.Mean), Two(residual.Median), Two(residual.P95), Two(residual.Max)];

    private static string Two(double value) => Invariant($"{value:0.00}");
}
