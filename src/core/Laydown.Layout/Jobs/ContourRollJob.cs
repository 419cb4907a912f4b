using Laydown.Layout.Contours;
using Laydown.Layout.Rolls;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Jobs;

/// <summary>Jobs of contours on two rolls side by side, or in sections: every roll or pair shortly, then the cheapest for as long as there is.</summary>
internal sealed class ContourRollJob
{
    /// <summary>Iterations of the first look at each choice, and of the first round on the best; each further round takes twice as many.</summary>
    private const long FirstLook = 100, FirstRound = 400;

    private readonly JobWriter writer;
    private readonly LayoutJob job;
    private readonly IReadOnlyList<ContourPiece> pieces;
    private readonly Action<JobLayout>? better;
    private readonly CancellationToken stop;
    private JobLayout? best;

    /// <summary>Ready to be laid out.</summary>
    /// <param name="writer">Writes layouts of the job.</param>
    /// <param name="pieces">Its pieces as a strip that runs along x takes them.</param>
    /// <param name="better">Told every better layout.</param>
    /// <param name="stop">Ends the search.</param>
    internal ContourRollJob(JobWriter writer, IReadOnlyList<ContourPiece> pieces, Action<JobLayout>? better, CancellationToken stop) =>
        (this.writer, job, this.pieces, this.better, this.stop) = (writer, writer.Job, pieces, better, stop);

    internal JobLayout Solve(SearchRules rules)
    {
        RollStock[] there = [.. job.Stocks.Where(s => s.Copies is not 0).Select(RollJob.StockOf)];
        JobStock[][] choices = [.. RollChecks.Choices(there, RollJob.TermsOf(job)).Select(c => c.Select(r => job.Stocks.First(s => s.Id == r.Id)).ToArray())];
        JobLayout[] first = [.. choices.Select(c => On(c, rules with { Iterations = Math.Min(rules.Iterations, FirstLook), Workers = 1 }))];
        JobStock[] chosen = choices[Enumerable.Range(0, first.Length).MinBy(i => Rank(first[i]))];
        int round = 0;
        for (long left = rules.Iterations - FirstLook, now = FirstRound; left > 0 && !stop.IsCancellationRequested; left -= now, now = Math.Min(now, long.MaxValue / 4) * 2)
            On(chosen, rules with { Iterations = Math.Min(left, now), Seed = rules.Seed + (round++ * rules.Workers) });
        return best!;
    }

    private JobLayout On(JobStock[] rolls, SearchRules rules)
    {
        int Own(string id) => job.Pieces.First(p => p.Id == id).StockId is { } own && rolls.Length > 1 && rolls[0].Id != rolls[1].Id ? Array.FindIndex(rolls, r => r.Id == own) : -1;
        ContourPiece[] taken = [.. pieces.Where(p => job.Pieces.First(j => j.Id == p.Id).StockId is not { } own || rolls.Any(r => r.Id == own))];
        ContourStrip[] strips = [.. rolls.Select(r => new ContourStrip(r.WidthMm, r.EdgeMarginMm))];
        ContourRollPlan plan = taken.Length == 0 ? new([.. rolls.Select(_ => new ContourLength([], [], 0))], []) : ContourRolls.Solve(
            taken, strips, job.Rules.ApartMm, new(job.Rules.LeastSectionMm, job.Rules.LongestSectionMm), Own, rules, stop);
        if (taken.Length == pieces.Count && plan.Rolls.Select((l, i) => End(rolls[i], l)).Max() <= rolls.Min(r => r.HeightMm) - job.Rules.LeadOutMm)
            plan = ContourRolls.Filled(plan, taken, strips, job.Rules.ApartMm, Own, ContourJob.MostOver(job));
        UnplacedPiece[] others = [.. pieces.Except(taken).Select(p => new UnplacedPiece(p.Id, p.Copies, Invariant($"{string.Join(" and ", rolls.Select(r => r.Id))} on the press"), "the roll it must lie on"))];
        JobLayout layout = Written(rolls, plan, others);
        if (best is null || Rank(layout).CompareTo(Rank(best)) < 0)
        {
            best = layout;
            better?.Invoke(layout);
        }

        return layout;
    }

    // Both are as long as the longer; what lies beyond the end of a roll has no place.
    private JobLayout Written(JobStock[] rolls, ContourRollPlan plan, UnplacedPiece[] others)
    {
        IReadOnlyList<ContourLength> lengths = plan.Rolls;
        double room = rolls.Min(r => r.HeightMm) - job.Rules.LeadOutMm;
        double TopOf(JobSpot s) => s.YMm + writer.Shapes.Turned(s.PieceId, s.AngleDegrees).Bounds.HeightMm;
        ILookup<bool, JobSpot>[] spots = [.. rolls.Select((r, i) => lengths[i].Spots.Select(s => ContourJob.Turned(writer, r, s)).ToLookup(s => TopOf(s) <= room + 1e-6))];
        UnplacedPiece[] tooLong = [.. spots.SelectMany(s => s[false]).GroupBy(s => s.PieceId, StringComparer.Ordinal).Select(g => new UnplacedPiece(
            g.Key, g.Count(), "no length left on the roll", Invariant($"a longer roll than {rolls.Min(r => r.HeightMm) / 1000:0.##} m")))];
        if (spots.All(s => !s[true].Any()))
            return writer.Whole([], [.. plan.Unplaced, .. others, .. tooLong]);

        double end = Math.Min(room, rolls.Select((r, i) => End(r, tooLong.Length == 0 ? lengths[i] : Kept(r, lengths[i], spots[i][true].Select(TopOf).DefaultIfEmpty(0).Max()))).Max());
        List<JobSheet> sheets = [];
        double start = 0;
        for (int i = 0; i < rolls.Length; i++)
        {
            JobSpot[] kept = [.. spots[i][true].OrderBy(s => s.YMm).ThenBy(s => s.XMm)];
            double top = kept.Select(TopOf).DefaultIfEmpty(0).Max();
            double[] cuts = [.. lengths[i].CutsMm.Select(c => c - rolls[i].EdgeMarginMm + job.Rules.LeadInMm).Where(c => c < top)];
            sheets.Add(writer.Sheet(rolls[i].Id, new(rolls[i].WidthMm, end + job.Rules.LeadOutMm), 1, kept, []) with { CutsAcrossMm = cuts, StartMm = rolls.Length > 1 ? start : null });
            start += rolls[i].WidthMm + job.Rules.CentreGapMm;
        }

        return writer.Whole(JobWriter.Numbered(sheets), [.. plan.Unplaced, .. others, .. tooLong]);
    }

    // Where the last section of a roll ends.
    private double End(JobStock roll, ContourLength length) => length.Spots.Count == 0 ? 0 : length.LengthMm - (2 * roll.EdgeMarginMm) + job.Rules.LeadInMm;

    // A roll up to the last piece that finds a length: its last section is lengthened as the others are.
    private ContourLength Kept(JobStock roll, ContourLength length, double topMm)
    {
        double top = topMm - job.Rules.LeadInMm + roll.EdgeMarginMm;
        double[] cuts = [.. length.CutsMm.Where(c => c < top)];
        double from = cuts.Length == 0 ? roll.EdgeMarginMm : cuts[^1] + (job.Rules.ApartMm / 2);
        return length with { CutsMm = cuts, LengthMm = Math.Max(top, from + job.Rules.LeastSectionMm) + roll.EdgeMarginMm };
    }

    private static (long, double, double) Rank(JobLayout layout) =>
        (layout.Unplaced.Sum(u => (long)u.Copies), Math.Round(layout.Cost, 9), Math.Round(layout.Sheets.Sum(s => s.Size.AreaM2), 9));
}
