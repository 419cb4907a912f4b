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
        bool roll = layout.Job.Stocks[0].Kind == JobStockKind.Roll;
        string used = roll ? Invariant($"{layout.Sheets.Sum(s => s.Size.HeightMm) / 1000:0.###} m of roll") : Invariant($"{layout.Sheets.Sum(s => s.Repeats)} boards in {layout.Sheets.Count} layouts");
        int left = layout.Unplaced.Sum(u => u.Copies);
        return Invariant($"{used}, {layout.FillPercent:0.0} % filled, cost {layout.Cost:0.##}{(left > 0 ? Invariant($", {left} copies without a place") : "")}");
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
                findings,
            });
            return;
        }

        Findings(answer, findings);
        answer.Line(Invariant($"{ended} after {seconds:0.0} s: {Line(layout)}"));
        answer.Table(["sheet", "stock", "size", "times", "pieces", "filled"], layout.Sheets.Select((s, i) => (IReadOnlyList<string>)
            [Invariant($"{i + 1}"), s.StockId, s.Size.ToString(), Invariant($"{s.Repeats}"), Invariant($"{s.Spots.Count}"), Invariant($"{s.FillPercent:0.0} %")]));
        foreach (UnplacedPiece left in layout.Unplaced)
            answer.Line(Invariant($"without a place: {left.Copies} × {left.PieceId}: {left.Found}; wanted {left.Wanted}"));
        answer.Line(Invariant($"{folder}: {string.Join(", ", files)}"));
    }

    /// <summary>What was repaired.</summary>
    public static void Findings(Answer answer, IReadOnlyList<JobFinding> findings) =>
        answer.Table(["", "file", "what", "measured", "wanted", "repair"], findings.Select(f => (IReadOnlyList<string>)
            [f.Finding.Severity == Severity.Warn ? "warn" : "note", f.File, f.Finding.What, f.Finding.Measured, f.Finding.Wanted, f.Finding.Repair ?? ""]));
}
