using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Shop.Colour;

namespace Laydown.Cli.Colour;

/// <summary><c>laydown optics …</c>: what inks do with light, fitted to readings of their chart.</summary>
internal static class OpticsCommand
{
    private static readonly int[] ShownNm = [380, 400, 420, 450, 500, 550, 600, 650, 700];

    public static Command Make(Shared shared)
    {
        Command command = new("optics", "Optics of inks: absorption, scatter and strength, fitted to readings of a chart (chart make --kind inkOptics).");
        command.Subcommands.Add(Show(shared));
        command.Subcommands.Add(Fit(shared));
        return command;
    }

    private static Command Show(Shared shared)
    {
        Argument<string> id = new("condition") { Description = "Print condition whose inks are shown." };
        Command command = new("show", "Shows the optics of a print condition's inks, where they come from and what is missing.") { id };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) =>
            {
                Reading<InkOpticsView> view = shop.Colour.ShowInkOptics.Show(parsed.GetRequiredValue(id));
                return Task.FromResult(view.IsTaken ? Tell(answer, view.Value) : answer.Fail(ExitCodes.Refused, "The optics cannot be shown.", view.Faults));
            },
            cancellation));
        return command;
    }

    private static Command Fit(Shared shared)
    {
        Argument<string[]> said = new("files") { Description = "Readings whose files say what stood behind (SAMPLE_BACKING black, white or lamp).", Arity = ArgumentArity.ZeroOrMore };
        Option<string[]> black = new("--over-black") { Description = "Readings over a black backing." }, white = new("--over-white") { Description = "Readings over a white backing." };
        Option<string[]> through = new("--through") { Description = "Readings with a lamp behind, the lamp alone being 100 %." };
        Option<string?> condition = new("--condition") { Description = "Print condition the chart was printed by: the optics are kept for its ink set." };
        Option<bool> own = new("--own") { Description = "Keep them for this print condition alone." };
        Option<string?> stock = new("--stock") { Description = "Sheet the chart was printed on; the thinnest clear one of the condition when left out." };
        Option<double?> aperture = new("--aperture") { Description = "Diameter of the instrument's aperture, mm." }, patch = new("--patch") { Description = "Side of a patch, mm." };
        Command command = new("fit", "Fits K, S and strength to readings over black, over white, through: two of the three. Without --condition only told.")
        {
            said, black, white, through, condition, own, stock, aperture, patch,
        };
        command.SetAction(async (parsed, cancellation) =>
        {
            IEnumerable<InkOpticsFile> Files(string[]? paths, Behind behind) => (paths ?? []).Select(p => new InkOpticsFile(Path.GetFullPath(p), behind));
            InkOpticsFile[] files =
            [
                .. Files(parsed.GetValue(said), Behind.Unsaid), .. Files(parsed.GetValue(black), Behind.Black),
                .. Files(parsed.GetValue(white), Behind.White), .. Files(parsed.GetValue(through), Behind.Lamp),
            ];
            if (files.Length == 0)
                return shared.Answer(parsed).Fail(ExitCodes.BadUsage, "optics fit: wanted at least one file of readings.", []);
            double? apertureMm = parsed.GetValue(aperture), patchMm = parsed.GetValue(patch);
            if (apertureMm is not (null or >= 0 and <= 1000) || patchMm is not (null or >= 0 and <= 10_000))
                return shared.Answer(parsed).Fail(ExitCodes.BadUsage, "--aperture and --patch: wanted millimetres, 0 to 1000 and 0 to 10000.", []);
            InkOpticsWish wish = new(files, parsed.GetValue(stock), apertureMm, patchMm, parsed.GetValue(own));
            if (parsed.GetValue(condition) is not { } id)
            {
                DateOnly day = shared.DayOf(parsed) ?? DateOnly.FromDateTime(DateTime.Now);
                return Tell(shared.Answer(parsed), await FitInkOptics.FitFilesAsync(Wiring.ColourFiles(), wish, day, cancellation), null);
            }

            return await shared.InShopAsync(
                parsed, async (shop, answer) => Tell(answer, await shop.Colour.FitInkOptics.FitAsync(id, wish, cancellation), id), cancellation);
        });
        return command;
    }

    private static int Tell(Answer answer, Reading<InkOpticsOutcome> fit, string? kept)
    {
        if (!fit.IsTaken)
            return answer.Fail(ExitCodes.Refused, "The readings carry no optics; nothing was changed.", fit.Faults);
        InkOpticsOutcome made = fit.Value;
        if (answer.AsJson)
        {
            answer.Json("ink-optics-fit", new { kept, optics = made.Optics, findings = made.Findings, notes = made.Notes });
            return ExitCodes.Done;
        }

        Tell(answer, made.Optics);
        foreach (Finding finding in made.Findings)
            answer.Line(Invariant($"{finding.Severity}: {finding.What} {finding.Measured}; wanted {finding.Wanted}."));
        foreach (string note in made.Notes)
            answer.Line(note);
        answer.Line(kept is null ? "nothing was kept: --condition keeps it" : Invariant($"kept as {made.Optics.Id}; in use for what is opened from now on"));
        return ExitCodes.Done;
    }

    private static int Tell(Answer answer, InkOpticsView view)
    {
        if (answer.AsJson)
        {
            answer.Json("ink-optics", new
            {
                condition = view.Condition.Id,
                inkSet = view.Inks.Id,
                optics = view.Optics,
                inks = view.Lights.Select(l => new
                {
                    l.Role,
                    l.IsGeneric,
                    l.AbsorptionFrom,
                    l.ScatterFrom,
                    l.Why,
                    l.Ink.Density,
                    l.Ink.Absorption,
                    l.Ink.Scatter,
                }),
                missing = view.Missing,
                hiding = view.Hiding,
            });
            return ExitCodes.Done;
        }

        answer.Line(Invariant($"{view.Condition.Id}: {view.Inks.Name}"));
        answer.Table(["ink", "comes from"], view.Lights.Select(l => (IReadOnlyList<string>)[InkRoleNames.Of(l.Role), (l.IsGeneric ? "GENERIC: " : "") + l.Why]));
        if (view.Optics is { } optics)
            Tell(answer, optics);
        answer.Table(["white asked, %", "acts, %", "hides, %", "lets through, %"], view.Hiding.Where(h => h.StrengthPercent % 20 == 0)
            .Select(h => (IReadOnlyList<string>)[One(h.StrengthPercent), One(h.LaydownPercent), One(h.HidingPercent), One(h.ThroughPercent)]));
        foreach (Finding finding in view.Missing)
            answer.Line(Invariant($"{finding.What} Wanted: {finding.Wanted}. Offered: {finding.Repair}."));
        return ExitCodes.Done;
    }

    private static void Tell(Answer answer, InkOptics optics)
    {
        answer.Line(Invariant($"{optics.Id}  {optics.Name}{(optics.Invented ? ", invented" : "")}"));
        answer.Table(["ink", "", .. ShownNm.Select(nm => Invariant($"{nm} nm"))], optics.Inks.SelectMany(Rows));
        if (optics.Fit is not { } fit)
            return;
        answer.Line(Invariant($"{fit.Patches.Count} readings of {fit.Readings}, fitted {fit.Fitted:yyyy-MM-dd}"));
        answer.Table(["", "mean", "p95", "max"], [Row("dE00", fit.MeanDeltaE, fit.P95DeltaE, fit.MaxDeltaE), Row("through, % of the lamp", fit.MeanDeltaTPercent, fit.P95DeltaTPercent, fit.MaxDeltaTPercent)]);
        answer.Table(["worst patch", "inks", "read", "dE00", "dY, %"], fit.Patches.OrderByDescending(p => p.DeltaE).Take(10)
            .Select(p => (IReadOnlyList<string>)[p.Id, p.Inks, p.Way, Invariant($"{p.DeltaE:0.00}"), Invariant($"{p.DeltaYPercent:0.00}")]));
    }

    private static IEnumerable<IReadOnlyList<string>> Rows(InkLight ink)
    {
        yield return [InkRoleNames.Of(ink.Role), "K·X", .. ShownNm.Select(nm => Two(ink.Absorption, ink.AbsorptionError, nm))];
        if (ink.Scatter.Any(s => s > 0))
            yield return ["", "S·X", .. ShownNm.Select(nm => Two(ink.Scatter, ink.ScatterError, nm))];
    }

    private static string Two(IReadOnlyList<double> values, IReadOnlyList<double>? errors, int nm)
    {
        int band = (nm - Bands.FirstNm) / Bands.StepNm;
        return errors is null ? Invariant($"{values[band]:0.000}") : Invariant($"{values[band]:0.000} ± {errors[band]:0.000}");
    }

    private static IReadOnlyList<string> Row(string name, double mean, double p95, double max) =>
        [name, Invariant($"{mean:0.00}"), Invariant($"{p95:0.00}"), Invariant($"{max:0.00}")];

    private static string One(double value) => Invariant($"{value:0.0}");
}
