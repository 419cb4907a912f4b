using Laydown.Layout.Rolls;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Jobs;

/// <summary>Jobs of rectangles on rolls: on the roll, or the two side by side, that cost least; what finds no length left goes onto the rolls that remain.</summary>
internal sealed class RollJob
{
    /// <summary>Iterations of the first round where several rolls are filled one after the other; each further round takes twice as many.</summary>
    private const long FirstRound = 300;

    private const int Plenty = 10_000;

    private readonly JobWriter writer;
    private readonly RollTerms terms;
    private readonly Action<JobLayout>? better;
    private readonly CancellationToken stop;
    private JobLayout? best;

    internal RollJob(JobWriter writer, Action<JobLayout>? better, CancellationToken stop)
    {
        (this.writer, this.better, this.stop) = (writer, better, stop);
        terms = TermsOf(writer.Job);
    }

    /// <summary>The best layout found.</summary>
    internal JobLayout Solve(SearchRules rules)
    {
        // One after the other shortly: where the first roll takes all, it alone is worked on for as long as there is.
        long first = Math.Min(rules.Iterations, FirstRound);
        int stages = Filled(rules with { Iterations = first });
        if (rules.Iterations == first || stop.IsCancellationRequested)
            return best!;
        if (stages == 1)
        {
            Filled(rules);
            return best!;
        }

        int round = 1;
        for (long left = rules.Iterations - first, now = 2 * first; left > 0 && !stop.IsCancellationRequested; left -= now, now = Math.Min(now, long.MaxValue / 4) * 2)
            Filled(rules with { Iterations = Math.Min(left, now), Seed = rules.Seed + (round++ * rules.Workers) });
        return best!;
    }

    /// <summary>How a job's rolls are printed and cut.</summary>
    internal static RollTerms TermsOf(LayoutJob job) => new(
        job.Rules.ApartMm, job.Rules.LeadInMm, job.Rules.LeadOutMm, job.Rules.Process, job.Rules.LeastSectionMm, job.Rules.LongestSectionMm,
        job.Rules.RollsSideBySide, job.Rules.CentreGapMm, job.Rules.AcrossMm, job.Rules.PricePerMetre,
        job.Pieces.Where(p => p.StockId is not null).ToDictionary(p => p.Id, p => p.StockId!, StringComparer.Ordinal) is { Count: > 0 } media ? media : null);

    /// <summary>A job's rolls as the search takes them.</summary>
    internal static RollStock StockOf(JobStock stock) =>
        new(stock.Id, stock.WidthMm, stock.HeightMm, stock.RollPricePerM2, stock.EdgeMarginMm, stock.Copies ?? Plenty);

    // Fills rolls until nothing more finds a place; tells how many times rolls were hung.
    private int Filled(SearchRules rules)
    {
        List<Piece> pieces = [.. writer.Rectangles()];
        List<RollStock> stocks = [.. writer.Job.Stocks.Where(s => s.Copies is not 0).Select(StockOf)];
        List<JobSheet> sheets = [];
        int stages = 0;
        while (pieces.Count > 0 && stocks.Count > 0 && RollChecks.HasChoice(stocks, terms))
        {
            List<JobSheet> before = [.. sheets];
            RollPlan plan = RollLayout.Solve(pieces, stocks, terms, rules, p => Keep([.. before, .. SheetsOf(p)], p.Unplaced), stop);
            Keep([.. before, .. SheetsOf(plan)], plan.Unplaced);
            if (plan.Strips.Count == 0)
                return Math.Max(1, stages);
            stages++;
            sheets.AddRange(SheetsOf(plan));
            Dictionary<string, int> left = plan.Unplaced.GroupBy(u => u.PieceId, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Sum(u => u.Copies), StringComparer.Ordinal);
            pieces = [.. pieces.Where(p => left.ContainsKey(p.Id)).Select(p => p with { Quantity = left[p.Id] })];
            foreach (string used in plan.Rolls)
                stocks = [.. stocks.Select(s => s.Id == used ? s with { Rolls = s.Rolls - 1 } : s).Where(s => s.Rolls > 0)];
        }

        if (stages == 0)
            Keep([], [.. pieces.Select(p => new UnplacedPiece(p.Id, p.Quantity, "no roll left", "a roll of which there is one"))]);
        return Math.Max(1, stages);
    }

    // Two rolls advance together, so both are as long as the longer; one that nothing lies on is used up as well.
    private IEnumerable<JobSheet> SheetsOf(RollPlan plan)
    {
        if (plan.Strips.Count == 0)
            yield break;
        double start = 0;
        for (int roll = 0; roll < plan.Rolls.Count; roll++)
        {
            JobStock stock = writer.Job.Stocks.First(s => s.Id == plan.Rolls[roll]);
            RollStrip? strip = plan.Strips.FirstOrDefault(s => s.Position == roll);
            yield return writer.Roll(stock.Id, new(stock.WidthMm, plan.AdvanceMm), strip?.Layout, plan.Rolls.Count > 1 ? start : null);
            start += stock.WidthMm + terms.CentreGapMm;
        }
    }

    private void Keep(IReadOnlyList<JobSheet> sheets, IReadOnlyList<UnplacedPiece> unplaced)
    {
        JobLayout layout = writer.Whole(JobWriter.Numbered(sheets), unplaced);
        if (best is not null && Rank(layout).CompareTo(Rank(best)) >= 0)
            return;
        best = layout;
        better?.Invoke(layout);
    }

    private static (long, double, double) Rank(JobLayout layout) => (
        layout.Unplaced.Sum(u => (long)u.Copies), Math.Round(layout.Cost, 9), Math.Round(layout.Sheets.Sum(s => s.Size.AreaM2), 9));
}
