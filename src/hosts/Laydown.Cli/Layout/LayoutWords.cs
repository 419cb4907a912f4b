using Laydown.Cli.Words;
using Laydown.Layout.Jobs;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Shop.Layout;

namespace Laydown.Cli.Layout;

/// <summary>Layouts as people and programs are told of them.</summary>
internal static class LayoutWords
{
    /// <summary>One line.</summary>
    public static string Line(JobLayout layout)
    {
        int left = layout.Unplaced.Sum(u => u.Copies);
        return Invariant($"{Used(layout)}, {layout.FillPercent:0.0} % filled, cost {layout.Cost:0.##}{(left > 0 ? Invariant($", {left} copies without a place") : "")}");
    }

    private static string Used(JobLayout layout)
    {
        if (layout.Job.Belt is not null)
            return layout.Lanes is { } lanes
                ? Invariant($"{lanes.Place.Lanes.Count} lanes, {lanes.FeedMm / 1000:0.###} m of belt{(lanes.PiecesPerHour is { } speed ? Invariant($", {speed:0} blanks an hour") : "")}")
                : "no lanes";
        if (layout.Job.Stocks[0].Kind == JobStockKind.Board)
            return Invariant($"{layout.Sheets.Sum(s => s.Repeats)} boards in {layout.Sheets.Count} layouts");
        string metres = Invariant($"{layout.Sheets.Where(s => s.StartMm is null or 0).Sum(s => s.Size.HeightMm) / 1000:0.###} m");
        return layout.Sheets.Any(s => s.StartMm is not null) ? metres + " of two rolls side by side" : metres + " of roll";
    }

    /// <summary>The whole answer.</summary>
    public static void Say(
        Answer answer, JobLayout layout, IReadOnlyList<JobFinding> findings, IReadOnlyList<string> files, string folder, string ended, double seconds)
    {
        if (answer.AsJson)
        {
            answer.Json("layout-made", new
            {
                folder,
                files,
                ended,
                seconds = Math.Round(seconds, 3),
                boards = layout.Sheets.Sum(s => s.Repeats),
                layouts = layout.Sheets.Count,
                fillPercent = layout.FillPercent,
                cost = layout.Cost,
                layout.Seed,
                layout.Iterations,
                unplaced = layout.Unplaced,
                lanes = layout.Lanes,
                findings,
                notes = JobNotes.Of(layout),
            });
            return;
        }

        Findings(answer, findings);
        answer.Line(Invariant($"{ended} after {seconds:0.0} s: {Line(layout)}"));
        if (layout.Lanes is { } lanes)
            Lanes(answer, lanes);
        else
            answer.Table(["sheet", "stock", "size", "times", "pieces", "filled", "cuts across"], layout.Sheets.Select((s, i) => (IReadOnlyList<string>)
            [Invariant($"{i + 1}"), s.StockId, s.Size.ToString(), Invariant($"{s.Repeats}"), Invariant($"{s.Spots.Count}"), Invariant($"{s.FillPercent:0.0} %"), Invariant($"{s.CutsAcrossMm?.Count ?? 0}")]));
        foreach (UnplacedPiece left in layout.Unplaced)
            answer.Line(Invariant($"without a place: {left.Copies} × {left.PieceId}: {left.Found}; wanted {left.Wanted}"));
        foreach (string note in JobNotes.Of(layout))
            answer.Line(note);
        answer.Line(Invariant($"{folder}: {string.Join(", ", files)}"));
    }

    private static void Lanes(Answer answer, JobLanes lanes)
    {
        answer.Table(["lane", "blank", "blanks", "side lay mm", "width mm", "feed mm", "turned", "load"], lanes.Place.Lanes.Select(l => (IReadOnlyList<string>)
            [Invariant($"{l.Number}"), l.BlankId ?? "", Invariant($"{l.Blanks}"), Invariant($"{l.StartMm:0.#}"), Invariant($"{l.WidthMm:0.#}"), Invariant($"{l.FeedMm:0.#}"), l.Turned == true ? "yes" : "no", Invariant($"{l.Loaded}")]));
        answer.Line(Invariant($"zones open: {Listed(lanes.Place.OpenZones)}; shut: {Listed(lanes.Place.ShutZones)}; {lanes.Place.UncoveredMm:0.#} mm open under no blank"));
    }

    private static string Listed(IReadOnlyList<string> ids) => ids.Count == 0 ? "none" : string.Join(' ', ids);

    /// <summary>What was repaired.</summary>
    public static void Findings(Answer answer, IReadOnlyList<JobFinding> findings) =>
        answer.Table(["", "file", "what", "measured", "wanted", "repair"], findings.Select(f => (IReadOnlyList<string>)
            [f.Finding.Severity == Severity.Warn ? "warn" : "note", f.File, f.Finding.What, f.Finding.Measured, f.Finding.Wanted, f.Finding.Repair ?? ""]));
}
