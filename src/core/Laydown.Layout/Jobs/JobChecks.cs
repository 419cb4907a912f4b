using Laydown.Geometry.Shapes;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Jobs;

/// <summary>Judges a layout by the rules of its own job: counts, angles, edges, keep-outs, distances, cuts from edge to edge.</summary>
/// <remarks>Distances are measured between the shapes themselves, so nothing that a search left out or rounded is believed.</remarks>
public static class JobChecks
{
    /// <summary>What a distance or an edge may miss, mm: layouts are written to a micrometre.</summary>
    public const double SlackMm = 0.002;

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
        Dictionary<string, long> left = layout.Unplaced.GroupBy(u => u.PieceId, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Sum(u => (long)u.Copies), StringComparer.Ordinal);
        foreach (JobPiece piece in layout.Job.Pieces)
            if (found.GetValueOrDefault(piece.Id) + left.GetValueOrDefault(piece.Id) is var all && all != piece.Quantity)
                yield return new(Invariant($"piece {piece.Id}"), Invariant($"{found.GetValueOrDefault(piece.Id)} laid out and {left.GetValueOrDefault(piece.Id)} without a place"), Invariant($"{piece.Quantity} in all"));
        foreach (JobStock stock in layout.Job.Stocks)
            if (stock.Copies is { } copies && layout.Sheets.Where(s => s.StockId == stock.Id).Sum(s => (long)s.Repeats) is var used && used > copies)
                yield return new(Invariant($"stock {stock.Id}"), Invariant($"{used} used"), Invariant($"at most {copies}"));
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

    private static IEnumerable<JobFault> OnSheet(JobLayout layout, JobShapes shapes, int number)
    {
        JobSheet sheet = layout.Sheets[number];
        JobStock stock = layout.Job.Stocks.First(s => s.Id == sheet.StockId);
        Shape[] lying = [.. sheet.Spots.Select(shapes.Lying)];
        foreach (JobFault fault in Edges(layout.Job, shapes, stock, sheet, lying).Concat(Distances(layout.Job.Rules.ApartMm, sheet, lying)))
            yield return fault with { Field = Invariant($"sheet {number + 1}, {fault.Field}") };
        RectMm[] boxes = [.. lying.Select(s => s.Bounds)];
        if (layout.Job.Rules.Process == CutProcess.Guillotine && !EdgeCuts.Part(boxes, layout.Job.Rules.ApartMm - SlackMm))
            yield return new(Invariant($"sheet {number + 1}"), "pieces that no cut from edge to edge parts", "a layout that cuts from edge to edge take apart");
    }

    private static IEnumerable<JobFault> Edges(LayoutJob job, JobShapes shapes, JobStock stock, JobSheet sheet, IReadOnlyList<Shape> lying)
    {
        // Margins shrink a shape; a straight edge needs no more than its rectangle.
        RectMm inner = new RectMm(0, 0, sheet.Size.WidthMm, sheet.Size.HeightMm).Grown(-stock.EdgeMarginMm);
        if (stock.Kind == JobStockKind.Roll)
            inner = new(stock.EdgeMarginMm, job.Rules.LeadInMm, stock.WidthMm - (2 * stock.EdgeMarginMm), Math.Min(sheet.Size.HeightMm, stock.HeightMm) - job.Rules.LeadInMm - job.Rules.LeadOutMm);
        Shape? room = stock.Contour is null ? null : shapes.Stock(stock.Id).Offset(SlackMm - stock.EdgeMarginMm);
        Shape[] keepOuts = [.. (stock.KeepOutsMm ?? []).Select(k => Shape.Of(k))];
        for (int i = 0; i < lying.Count; i++)
        {
            string field = Invariant($"piece {sheet.Spots[i].PieceId}, copy {sheet.Spots[i].Copy}");
            if (!inner.Holds(lying[i].Bounds, SlackMm) || room?.Holds(lying[i]) == false)
                yield return new(field, Invariant($"within {Words(lying[i].Bounds)}"), Invariant($"within the stock less {stock.EdgeMarginMm:0.###} mm: {Words(inner)}"));
            foreach (Shape keepOut in keepOuts)
                if (lying[i].DistanceMm(keepOut) is var near && near < job.Rules.ApartMm - SlackMm)
                    yield return new(field, Invariant($"{near:0.###} mm from the keep-out {Words(keepOut.Bounds)}"), Invariant($"at least {job.Rules.ApartMm:0.###} mm"));
                else if (job.Rules.ApartMm == 0 && lying[i].Common(keepOut).AreaMm2 > SlackMm)
                    yield return new(field, "on a keep-out", "beside it");
        }
    }

    // Along x only shapes whose boxes come near are measured.
    private static IEnumerable<JobFault> Distances(double apartMm, JobSheet sheet, IReadOnlyList<Shape> lying)
    {
        int[] order = [.. Enumerable.Range(0, lying.Count).OrderBy(i => lying[i].Bounds.XMm)];
        RectMm[] boxes = [.. lying.Select(s => s.Bounds)];
        List<int> open = [];
        foreach (int i in order)
        {
            open.RemoveAll(o => boxes[o].RightMm + apartMm < boxes[i].XMm);
            foreach (int other in open.Where(o => boxes[o].Grown(Math.Max(apartMm, SlackMm)).Overlaps(boxes[i], 0)))
                if (Between(lying[i], lying[other], apartMm) is { } found)
                    yield return new(Invariant($"pieces {Name(sheet.Spots[other])} and {Name(sheet.Spots[i])}"), found, Invariant($"at least {apartMm:0.###} mm apart"));
            open.Add(i);
        }
    }

    private static string? Between(Shape one, Shape other, double apartMm)
    {
        double distance = one.DistanceMm(other);
        if (distance > 0)
            return distance < apartMm - SlackMm ? Invariant($"{distance:0.####} mm apart") : null;
        double common = one.Common(other).AreaMm2;
        double allowed = apartMm > 0 ? 0 : SlackMm * Math.Max(one.Bounds.WidthMm + one.Bounds.HeightMm, other.Bounds.WidthMm + other.Bounds.HeightMm);
        return apartMm > SlackMm || common > allowed ? Invariant($"an overlap of {common:0.###} mm²") : null;
    }

    private static string Name(JobSpot spot) => Invariant($"{spot.PieceId} {spot.Copy}");

    private static string Words(RectMm r) => Invariant($"x {r.XMm:0.###} to {r.RightMm:0.###}, y {r.YMm:0.###} to {r.TopMm:0.###} mm");
}
