using Laydown.Geometry.Shapes;
using Laydown.Layout.Judging;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Jobs;

/// <summary>Judges a layout by the rules of its own job: counts, angles, edges, keep-outs, distances, cuts from edge to edge, sections of rolls, lanes.</summary>
/// <remarks>Distances are measured between the shapes themselves, so nothing that a search left out or rounded is believed.</remarks>
public static class JobChecks
{
    /// <summary>What a distance or an edge may miss, mm: layouts are written to a micrometre.</summary>
    public const double SlackMm = SheetJudge.SlackMm;

    private const int MostFaults = 100;

    /// <summary>All that is wrong; empty for a sound layout.</summary>
    public static IReadOnlyList<JobFault> Faults(JobLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        IReadOnlyList<JobFault> job = JobDemands.Faults(layout.Job);
        if (job.Count > 0)
            return job;
        JobShapes shapes = new(layout.Job);
        List<JobFault> faults = [.. Unknown(layout)];
        if (faults.Count > 0)
            return faults;
        faults.AddRange(Counts(layout));
        faults.AddRange(Angles(layout));
        faults.AddRange(JobRollChecks.Faults(layout, shapes).Take(MostFaults));
        if (layout.Job.Belt is not null)
            faults.AddRange(JobLaneChecks.Faults(layout).Take(MostFaults));
        faults.AddRange(OneForAll(layout));
        for (int i = 0; i < layout.Sheets.Count && faults.Count < MostFaults; i++)
            faults.AddRange(OnSheet(layout, shapes, i).Take(MostFaults - faults.Count));
        return faults;
    }

    private static IEnumerable<JobFault> Unknown(JobLayout layout)
    {
        HashSet<string> pieces = [.. layout.Job.Pieces.Select(p => p.Id)], stocks = [.. layout.Job.Stocks.Select(s => s.Id)];
        return layout.Sheets.SelectMany((sheet, i) => sheet.Spots.Select((s, j) => (s.PieceId, Field: Invariant($"/sheets/{i}/spots/{j}/pieceId"), Known: pieces.Contains(s.PieceId)))
                .Append((PieceId: sheet.StockId, Field: Invariant($"/sheets/{i}/stockId"), Known: stocks.Contains(sheet.StockId))))
            .Where(s => !s.Known).Take(MostFaults).Select(s => new JobFault(s.Field, s.PieceId, "an id of the job"));
    }

    // Every copy is laid out once or told to be without a place.
    private static IEnumerable<JobFault> Counts(JobLayout layout)
    {
        Dictionary<string, long> found = new(StringComparer.Ordinal);
        foreach (JobSheet sheet in layout.Sheets)
            foreach (JobSpot spot in sheet.Spots)
                found[spot.PieceId] = found.GetValueOrDefault(spot.PieceId) + sheet.Repeats;
        foreach (Lane lane in layout.Lanes?.Place.Lanes ?? [])
            found[lane.BlankId ?? ""] = found.GetValueOrDefault(lane.BlankId ?? "") + lane.Blanks;
        Dictionary<string, long> left = layout.Unplaced.GroupBy(u => u.PieceId, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Sum(u => (long)u.Copies), StringComparer.Ordinal);
        foreach (JobPiece piece in layout.Job.Pieces)
            if (found.GetValueOrDefault(piece.Id) + left.GetValueOrDefault(piece.Id) is var all && (all < piece.Quantity || all > piece.Quantity + MostOver(layout, piece)))
                yield return new(Invariant($"piece {piece.Id}"), Invariant($"{found.GetValueOrDefault(piece.Id)} laid out and {left.GetValueOrDefault(piece.Id)} without a place"), Wanted(piece.Quantity, MostOver(layout, piece)));
        foreach (JobStock stock in layout.Job.Stocks)
            if (stock.Copies is { } copies && layout.Sheets.Where(s => s.StockId == stock.Id).Sum(s => (long)s.Repeats) is var used && used > copies)
                yield return new(Invariant($"stock {stock.Id}"), Invariant($"{used} used"), Invariant($"at most {copies}"));
    }

    // One layout cut again and again makes fewer than one copy too many for each board.
    private static long MostOver(JobLayout layout, JobPiece piece) =>
        piece.OversAllowed + (layout.Job.Rules.OneLayout && layout.Sheets is [{ Repeats: var times }] ? times - 1 : 0);

    private static string Wanted(long quantity, long over) => over > 0 ? Invariant($"{quantity} to {quantity + over} in all") : Invariant($"{quantity} in all");

    private static IEnumerable<JobFault> OneForAll(JobLayout layout)
    {
        if (layout.Job.Rules.OneLayout && layout.Sheets.Count > 1)
            yield return new("sheets", Invariant($"{layout.Sheets.Count} layouts"), "one layout for the whole run");
    }

    private static IEnumerable<JobFault> Angles(JobLayout layout)
    {
        Dictionary<string, JobPiece> pieces = layout.Job.Pieces.ToDictionary(p => p.Id, StringComparer.Ordinal);
        JobSpot[] spots = [.. layout.Sheets.SelectMany(s => s.Spots)];
        foreach (JobSpot spot in spots.Where(s => !pieces[s.PieceId].AnyAngle && !IsAmong(s.AngleDegrees, pieces[s.PieceId].Angles)).Take(MostFaults))
            yield return new(Invariant($"piece {spot.PieceId}, copy {spot.Copy}"), Invariant($"{spot.AngleDegrees:0.####}°"), Invariant($"{string.Join(", ", pieces[spot.PieceId].Angles)}°"));
        foreach (IGrouping<string?, JobSpot> group in spots.GroupBy(s => pieces[s.PieceId].Direction).Where(g => g.Key is not null))
            if (group.Select(s => s.AngleDegrees).Distinct().Skip(1).Any())
                yield return new(Invariant($"direction {group.Key}"), Invariant($"angles {string.Join(", ", group.Select(s => s.AngleDegrees).Distinct().Take(5))}°"), "one common angle");
    }

    private static bool IsAmong(double angle, IReadOnlyList<double> angles) => angles.Any(a => Math.Abs((((angle - a) % 360) + 540) % 360 - 180) < 1e-6);

    // How pieces lie on a sheet is judged by the same code as layouts made by hand.
    private static IEnumerable<JobFault> OnSheet(JobLayout layout, JobShapes shapes, int number)
    {
        JobSheet sheet = layout.Sheets[number];
        JobStock stock = layout.Job.Stocks.First(s => s.Id == sheet.StockId);
        SheetRoom room = RoomOf(layout.Job, shapes, stock, sheet);
        LyingPiece[] lying = [.. sheet.Spots.Select(shapes.LyingPiece)];
        return SheetJudge.Flaws(lying, room).Select(f => FaultOf(f, sheet, lying, room, stock.EdgeMarginMm))
            .Select(f => f with { Field = Invariant($"sheet {number + 1}{f.Field}") });
    }

    // Margins shrink a shape; a straight edge needs no more than its rectangle.
    private static SheetRoom RoomOf(LayoutJob job, JobShapes shapes, JobStock stock, JobSheet sheet)
    {
        double margin = stock.EdgeMarginMm;
        RectMm inside = stock.Kind == JobStockKind.Roll
            ? new(margin, job.Rules.LeadInMm, stock.WidthMm - (2 * margin), Math.Min(sheet.Size.HeightMm, stock.HeightMm) - job.Rules.LeadInMm - job.Rules.LeadOutMm)
            : new RectMm(0, 0, sheet.Size.WidthMm, sheet.Size.HeightMm).Grown(-margin);
        Shape? edge = stock.Contour is null ? null : shapes.Stock(stock.Id).Offset(SlackMm - margin);
        return new(inside, job.Rules.ApartMm, job.Rules.Process, stock.KeepOutsMm ?? [], edge);
    }

    private static JobFault FaultOf(SheetFlaw flaw, JobSheet sheet, LyingPiece[] lying, SheetRoom room, double marginMm)
    {
        string one = Name(sheet.Spots[flaw.Pieces[0]]), apart = Invariant($"at least {room.GapMm:0.###} mm");
        string distance = flaw.SharedMm2 > 0 ? Invariant($"an overlap of {flaw.SharedMm2:0.###} mm²") : Invariant($"{Math.Max(0, flaw.ApartMm):0.####} mm apart");
        return flaw.Kind switch
        {
            SheetFlawKind.Overlap or SheetFlawKind.Gap => new(Invariant($", pieces {one} and {Name(sheet.Spots[flaw.Pieces[1]])}"), distance, apart + " apart"),
            SheetFlawKind.Outside => new(
                Invariant($", piece {one}"), Invariant($"within {Words(lying[flaw.Pieces[0]].Box)}"),
                Invariant($"within the stock less {marginMm:0.###} mm: {Words(room.Inside)}")),
            SheetFlawKind.KeepOut => new(Invariant($", piece {one}"), Invariant($"{distance}, from the keep-out {Words(flaw.Where)}"), apart + " apart"),
            _ => new("", Invariant($"{flaw.Pieces.Count} pieces that no cut from edge to edge parts"), "a layout that cuts from edge to edge take apart"),
        };
    }

    private static string Name(JobSpot spot) => Invariant($"{spot.PieceId} {spot.Copy}");

    private static string Words(RectMm r) => Invariant($"x {r.XMm:0.###} to {r.RightMm:0.###}, y {r.YMm:0.###} to {r.TopMm:0.###} mm");
}
