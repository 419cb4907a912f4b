namespace Laydown.Layout.Jobs;

/// <summary>Judges what only rolls have: widths, lengths left, cuts across, sections, two side by side, pieces tied to a roll.</summary>
internal static class JobRollChecks
{
    private const double SlackMm = JobChecks.SlackMm;

    /// <summary>All that is wrong.</summary>
    internal static IEnumerable<JobFault> Faults(JobLayout layout, JobShapes shapes)
    {
        Dictionary<string, JobStock> stocks = layout.Job.Stocks.ToDictionary(s => s.Id, StringComparer.Ordinal);
        Dictionary<string, JobPiece> pieces = layout.Job.Pieces.ToDictionary(p => p.Id, StringComparer.Ordinal);
        for (int i = 0; i < layout.Sheets.Count; i++)
        {
            JobSheet sheet = layout.Sheets[i];
            string field = Invariant($"sheet {i + 1}");
            foreach (JobSpot spot in sheet.Spots.Where(s => pieces[s.PieceId].StockId is { } own && own != sheet.StockId).Take(10))
                yield return new(Invariant($"{field}, piece {spot.PieceId}, copy {spot.Copy}"), Invariant($"on {sheet.StockId}"), Invariant($"on {pieces[spot.PieceId].StockId}"));
            if (stocks[sheet.StockId].Kind == JobStockKind.Board)
            {
                if (sheet.StartMm is not null || sheet.CutsAcrossMm is { Count: > 0 })
                    yield return new(field, "a board with cuts across or a place beside another", "a board");
                continue;
            }

            foreach (JobFault fault in (IEnumerable<JobFault>)[.. OnRoll(layout.Job.Rules, stocks[sheet.StockId], sheet), .. Sections(layout.Job.Rules, shapes, sheet), .. Beside(layout, i)])
                yield return fault with { Field = Invariant($"{field}, {fault.Field}") };
        }
    }

    private static IEnumerable<JobFault> OnRoll(JobRules rules, JobStock stock, JobSheet sheet)
    {
        if (Math.Abs(sheet.Size.WidthMm - stock.WidthMm) > SlackMm || sheet.Size.HeightMm > stock.HeightMm + SlackMm)
            yield return new("size", sheet.Size.ToString(), Invariant($"{stock.WidthMm:0.###} mm wide and at most {stock.HeightMm:0.###} mm long"));
        if (sheet.Repeats != 1)
            yield return new("repeats", Invariant($"{sheet.Repeats}"), "1 for a length of roll");
        IReadOnlyList<double> cuts = sheet.CutsAcrossMm ?? [];
        double end = sheet.Size.HeightMm - rules.LeadOutMm;
        for (int c = 0; c < cuts.Count; c++)
            if (cuts[c] <= (c == 0 ? rules.LeadInMm : cuts[c - 1]) || cuts[c] > end + SlackMm)
                yield return new("cuts across", Invariant($"a cut at {cuts[c]:0.###} mm"), Invariant($"ascending places from {rules.LeadInMm:0.###} to {end:0.###} mm"));
    }

    // A cut goes through the middle of what lies between two pieces, so half of it is the section's. The shorter of two rolls runs on bare.
    private static IEnumerable<JobFault> Sections(JobRules rules, JobShapes shapes, JobSheet sheet)
    {
        double half = rules.ApartMm / 2, end = sheet.Size.HeightMm - rules.LeadOutMm + half;
        double own = sheet.StartMm is null ? end : sheet.Spots.Select(s => s.YMm + shapes.Turned(s.PieceId, s.AngleDegrees).Bounds.HeightMm).DefaultIfEmpty(0).Max() + half;
        double[] starts = [rules.LeadInMm - half, .. sheet.CutsAcrossMm ?? []];
        foreach (double cut in sheet.CutsAcrossMm ?? [])
            if (sheet.Spots.FirstOrDefault(s => s.YMm < cut + half - SlackMm && s.YMm + shapes.Turned(s.PieceId, s.AngleDegrees).Bounds.HeightMm > cut - half + SlackMm) is { } crossed)
                yield return new("cuts across", Invariant($"a cut at {cut:0.###} mm, over {crossed.PieceId} {crossed.Copy}"), Invariant($"{half:0.###} mm from every piece"));
        for (int s = 0; s < starts.Length && sheet.Spots.Count > 0; s++)
        {
            bool last = s + 1 == starts.Length;
            double whole = (last ? end : starts[s + 1]) - starts[s] - rules.ApartMm, filled = (last ? own : starts[s + 1]) - starts[s] - rules.ApartMm;
            if (whole < rules.LeastSectionMm - SlackMm || (rules.LongestSectionMm > 0 && filled > rules.LongestSectionMm + SlackMm))
                yield return new(Invariant($"section {s + 1}"), Invariant($"{filled:0.###} mm"), Invariant($"from {rules.LeastSectionMm:0.###} mm{(rules.LongestSectionMm > 0 ? Invariant($" to {rules.LongestSectionMm:0.###} mm") : "")}"));
        }
    }

    private static IEnumerable<JobFault> Beside(JobLayout layout, int number)
    {
        JobSheet sheet = layout.Sheets[number];
        JobRules rules = layout.Job.Rules;
        if (sheet.StartMm is not { } start)
        {
            if (rules.RollsSideBySide == 2)
                yield return new("startMm", "none", "where the roll starts across the press, of two side by side");
            else if (sheet.Size.WidthMm > rules.AcrossMm + SlackMm)
                yield return new("size", sheet.Size.ToString(), Invariant($"at most {rules.AcrossMm:0.###} mm across the press"));
            yield break;
        }

        JobSheet? other = layout.Sheets.ElementAtOrDefault(start > 0 ? number - 1 : number + 1);
        if (rules.RollsSideBySide != 2 || other?.StartMm is null || (start > 0) == (other.StartMm > 0))
            yield return new("startMm", Invariant($"{start:0.###} mm"), rules.RollsSideBySide == 2 ? "a left roll at 0 and the right one after it" : "none: one roll at a time");
        else if (start > 0 && (start < other.Size.WidthMm + rules.CentreGapMm - SlackMm || start + sheet.Size.WidthMm > rules.AcrossMm + SlackMm))
            yield return new("startMm", Invariant($"{start:0.###} to {start + sheet.Size.WidthMm:0.###} mm"), Invariant($"from {other.Size.WidthMm + rules.CentreGapMm:0.###} to {rules.AcrossMm:0.###} mm"));
        else if (start > 0 && Math.Abs(sheet.Size.HeightMm - other.Size.HeightMm) > SlackMm)
            yield return new("size", sheet.Size.ToString(), Invariant($"as long as the roll beside it, {other.Size.HeightMm:0.###} mm: both advance together"));
    }
}
