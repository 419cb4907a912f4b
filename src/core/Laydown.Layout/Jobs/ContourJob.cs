using Laydown.Geometry.Shapes;
using Laydown.Layout.Contours;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Jobs;

/// <summary>Jobs with contours, irregular offcuts or keep-outs: all pieces go through the search for contours, rectangles as contours of four corners.</summary>
internal static class ContourJob
{
    /// <summary>Iterations on each of several rolls before the best of them is worked on.</summary>
    private const long FirstLook = 100;

    internal static JobLayout Solve(JobWriter writer, SearchRules rules, Action<JobLayout>? better, CancellationToken stop)
    {
        LayoutJob job = writer.Job;
        Action<ContourResult>? told = better is null ? null : r => better(Written(writer, job.Stocks[0], r));

        // The strip of the search runs along x, a roll along y: what lies at an angle there lies a quarter further here.
        double turn = job.Stocks[0].Kind == JobStockKind.Roll ? 90 : 0;
        ContourPiece[] pieces = [.. job.Pieces.Select(p => new ContourPiece(p.Id, writer.Shapes.Piece(p.Id), p.Quantity, AnglesOf(p, turn), p.Direction))];
        if (job.Stocks[0].Kind == JobStockKind.Board)
        {
            ContourProblem boards = ContourProblem.On([.. job.Stocks.Select(s => StockOf(writer, s))], job.Rules.ApartMm, pieces);
            return Written(writer, job.Stocks[0], Ended(boards, ContourLayout.Solve(boards, rules, told, stop), job, rules));
        }

        if (job.Rules is { RollsSideBySide: 2 } or { LeastSectionMm: > 0 } or { LongestSectionMm: > 0 })
            return new ContourRollJob(writer, pieces, better, stop).Solve(rules);

        // Every roll shortly, then the best of them for as long as there is.
        JobLayout OnRoll(JobStock roll, SearchRules work, Action<JobLayout>? tell)
        {
            ContourProblem strip = ContourProblem.On(new ContourStrip(roll.WidthMm, roll.EdgeMarginMm), job.Rules.ApartMm, pieces);
            ContourResult result = ContourLayout.Solve(strip, work, tell is null ? null : r => tell(Written(writer, roll, r)), stop);
            double length = result.LengthMm - (2 * roll.EdgeMarginMm) + job.Rules.LeadInMm + job.Rules.LeadOutMm;
            return Written(writer, roll, length <= roll.HeightMm ? ContourOvers.Filled(strip, result, MostOver(job)) : result);
        }

        if (job.Stocks.Count == 1)
            return OnRoll(job.Stocks[0], rules, better);
        (JobStock Roll, JobLayout Layout) first = job.Stocks.Select(s => (s, OnRoll(s, rules with { Iterations = Math.Min(rules.Iterations, FirstLook) }, null))).MinBy(l => Rank(l.Item2));
        better?.Invoke(first.Layout);
        JobLayout best = first.Layout;
        if (rules.Iterations <= FirstLook || stop.IsCancellationRequested)
            return best;
        void Keep(JobLayout layout)
        {
            if (Rank(layout).CompareTo(Rank(best)) >= 0)
                return;
            best = layout;
            better?.Invoke(layout);
        }

        Keep(OnRoll(first.Roll, rules, Keep));
        return best;
    }

    // The last board is pushed together, filled with what may be made more, and what lies on it now pushed together again.
    private static ContourResult Ended(ContourProblem problem, ContourResult result, LayoutJob job, SearchRules rules)
    {
        ContourResult Pushed(ContourResult r) => LastBoard.Pushed(problem, r, job.Rules.OffcutLeastSideMm, rules);
        ContourResult pushed = Pushed(result), filled = ContourOvers.Filled(problem, pushed, MostOver(job));
        return filled == pushed ? pushed : Pushed(filled);
    }

    internal static Dictionary<string, int> MostOver(LayoutJob job) => job.Pieces.ToDictionary(p => p.Id, p => p.OversAllowed, StringComparer.Ordinal);

    private static (long, double, double) Rank(JobLayout layout) =>
        (layout.Unplaced.Sum(u => (long)u.Copies), layout.Cost, layout.Sheets.Sum(s => s.Size.AreaM2));

    private static ContourAngles AnglesOf(JobPiece piece, double turn) =>
        piece.AnyAngle ? ContourAngles.Free : ContourAngles.Of([.. piece.Angles.Select(a => a - turn)]);

    private static ContourStock StockOf(JobWriter writer, JobStock stock) => new(
        stock.Id, writer.Shapes.Stock(stock.Id), stock.Copies, stock.Price, stock.EdgeMarginMm, [.. (stock.KeepOutsMm ?? []).Select(k => Shape.Of(k))]);

    private static JobLayout Written(JobWriter writer, JobStock roll, ContourResult result) => roll.Kind == JobStockKind.Board
        ? writer.Whole([.. SameSheets.Merged(result.Sheets).Select(s => OnBoard(writer, s.Sheet, s.Repeats))], result.Unplaced)
        : OnRoll(writer, roll, result);

    private static JobSheet OnBoard(JobWriter writer, ContourSheet sheet, int repeats)
    {
        JobStock stock = writer.Job.Stocks.First(s => s.Id == sheet.StockId);
        JobSpot[] spots = [.. sheet.Spots.Select(s => SpotOf(writer, s)).OrderBy(s => s.YMm).ThenBy(s => s.XMm)];
        return writer.Sheet(stock.Id, new(stock.WidthMm, stock.HeightMm), repeats, spots, stock.Contour is null ? Rests(writer, spots, stock) : []);
    }

    private static JobSpot SpotOf(JobWriter writer, ContourSpot spot)
    {
        RectMm box = writer.Shapes.Turned(spot.PieceId, spot.AngleDegrees).Bounds;
        return new(spot.PieceId, spot.Copy, box.XMm + spot.XMm, box.YMm + spot.YMm, spot.AngleDegrees);
    }

    /// <summary>A spot of the strip turned by a quarter and moved behind the lead-in of a roll.</summary>
    internal static JobSpot Turned(JobWriter writer, JobStock roll, ContourSpot spot)
    {
        double angle = (spot.AngleDegrees + 90) % 360;
        RectMm box = writer.Shapes.Turned(spot.PieceId, angle).Bounds;
        return new(spot.PieceId, spot.Copy, roll.WidthMm - spot.YMm + box.XMm, spot.XMm - roll.EdgeMarginMm + writer.Job.Rules.LeadInMm + box.YMm, angle);
    }

    private static JobLayout OnRoll(JobWriter writer, JobStock roll, ContourResult result)
    {
        JobRules cut = writer.Job.Rules;
        JobSpot[] spots = [.. result.Sheets.SelectMany(s => s.Spots).Select(s => Turned(writer, roll, s))];
        double TopOf(JobSpot s) => s.YMm + writer.Shapes.Turned(s.PieceId, s.AngleDegrees).Bounds.HeightMm;
        ILookup<bool, JobSpot> fits = spots.ToLookup(s => TopOf(s) + cut.LeadOutMm <= roll.HeightMm + 1e-6);
        UnplacedPiece[] tooLong = [.. fits[false].GroupBy(s => s.PieceId, StringComparer.Ordinal).Select(g => new UnplacedPiece(
            g.Key, g.Count(), "no length left on the roll", Invariant($"a longer roll than {roll.HeightMm / 1000:0.##} m")))];
        JobSpot[] kept = [.. fits[true].OrderBy(s => s.YMm).ThenBy(s => s.XMm)];
        JobSheet[] sheets = kept.Length == 0 ? [] : [writer.Sheet(roll.Id, new(roll.WidthMm, kept.Max(TopOf) + cut.LeadOutMm), 1, kept, [])];
        return writer.Whole(sheets, [.. result.Unplaced, .. tooLong]);
    }

    // What lies beyond all pieces at the right-hand or the upper edge comes off with one straight cut.
    private static IReadOnlyList<RectMm> Rests(JobWriter writer, IReadOnlyList<JobSpot> spots, JobStock stock)
    {
        double gap = writer.Job.Rules.ToolMm;
        RectMm[] boxes = [.. spots.Select(s => writer.Shapes.Turned(s.PieceId, s.AngleDegrees).Bounds is { } b ? new RectMm(s.XMm, s.YMm, b.WidthMm, b.HeightMm) : default)];
        double right = boxes.Max(b => b.RightMm) + gap, top = boxes.Max(b => b.TopMm) + gap;
        RectMm[] rests = [new(right, 0, stock.WidthMm - right, stock.HeightMm), new(0, top, stock.WidthMm, stock.HeightMm - top)];
        return [.. rests.Where(r => Math.Min(r.WidthMm, r.HeightMm) >= writer.Job.Rules.OffcutLeastSideMm).OrderByDescending(r => r.Size.AreaM2).Take(1)];
    }
}
