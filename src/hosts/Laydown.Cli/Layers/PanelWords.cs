using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop.Layers;

namespace Laydown.Cli.Layers;

/// <summary>Says what a look is.</summary>
internal static class PanelWords
{
    public static IReadOnlyList<string> Headings { get; } =
        ["", "look", "how", "pixels", "ppi", "day mean", "p95", "night mean", "p95", "ghost p95", "unreachable", "made"];

    public static IReadOnlyList<string> Row(LookRecord look, bool chosen) => look.Report is { } report
        ? [chosen ? "*" : "", look.LookId, "solved", Size(look), Invariant($"{look.Ppi:0.#}"), Two(report.Day.Mean), Two(report.Day.P95), Two(report.Night.Mean),
            Two(report.Night.P95), Two(report.GhostP95), Invariant($"{report.UnreachablePercent:0.0} %"), When(look)]
        : [chosen ? "*" : "", look.LookId, "separated", Size(look), Invariant($"{look.Ppi:0.#}"), "", "", "", "", "", "", When(look)];

    public static int Tell(Answer answer, StoredLook look)
    {
        if (answer.AsJson)
        {
            answer.Json("panel-look", new { folder = look.Folder, look = look.Record });
            return ExitCodes.Done;
        }

        LookRecord record = look.Record;
        answer.Line(Invariant($"{record.LookId}  {(record.How == LookHow.Solved ? "solved" : "separated")}, {Size(record)} pixels at {record.Ppi:0.#} ppi, {record.SizeMm}"));
        answer.Line(Invariant($"{record.StockId}, {record.InkSetId}, {record.ConditionId}{(record.Generic ? ": the ink set has no optics of its own, generic inks stand for it" : "")}"));
        if (record.Aim is { } aim)
        {
            answer.Line(Invariant($"aim: white {string.Join(", ", aim.WhiteStrengths.Select(s => Invariant($"{100 * s:0} %")))}, day black at L* {aim.LiftPercent:0.#}, night exposure {aim.NightExposure:0.00}"));
            answer.Line(Invariant($"white by day {aim.DayWhiteCdPerM2:0} cd/m2, white of the night picture {aim.NightWhiteCdPerM2:0} cd/m2"));
            foreach (string because in aim.Because)
                answer.Line(because);
        }

        if (record.Report is { } report)
            Tell(answer, report);
        foreach (Finding finding in record.Findings)
            answer.Line(Invariant($"{finding.Severity.ToString().ToLowerInvariant()}: {finding.What}"));
        answer.Line(look.Folder);
        return ExitCodes.Done;
    }

    private static void Tell(Answer answer, LookReport report)
    {
        answer.Table(["dE00", "mean", "p95", "max"],
        [
            Row("day to aim", report.Day), Row("night to aim", report.Night), Row("day to picture", report.DayToPicture), Row("night to picture", report.NightToPicture),
        ], named: true);
        answer.Line(Invariant($"ghost of the night picture by day: mean {report.GhostMean:0.00}, p95 {report.GhostP95:0.00}; leak p95 {report.LeakP95:0.00} dE00; night light given up {report.NightLightLostPercent:0.0} %"));
        answer.Line(Invariant($"night {report.NightLeastCdPerM2:0.#} to {report.NightMostCdPerM2:0} cd/m2, mean {report.NightMeanCdPerM2:0.#}"));
        answer.Line(Invariant($"cannot be reached: {report.UnreachablePercent:0.0} % of the piece"));
        foreach (LookReason reason in report.Reasons)
            answer.Line(Invariant($"  {reason.Percent:0.0} %: {reason.Words}"));
        answer.Table(["if, dE00", "day mean", "p95", "night mean", "p95"], report.Changes.Select(c => (IReadOnlyList<string>)
            [c.What, Two(c.DayMean), Two(c.DayP95), Two(c.NightMean), Two(c.NightP95)]), named: true);
        foreach (string note in report.Notes)
            answer.Line(note);
    }

    private static IReadOnlyList<string> Row(string name, LookDifference difference) => [name, Two(difference.Mean), Two(difference.P95), Two(difference.Max)];

    private static string Size(LookRecord look) => Invariant($"{look.WidthPx} × {look.HeightPx}");

    private static string When(LookRecord look) => Invariant($"{look.Made:yyyy-MM-dd HH:mm}");

    private static string Two(double value) => Invariant($"{value:0.00}");
}
