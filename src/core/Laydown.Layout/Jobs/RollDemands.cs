using Laydown.Layout.Rolls;

namespace Laydown.Layout.Jobs;

/// <summary>What a job must be as far as its rolls go, and what only rolls have.</summary>
internal static class RollDemands
{
    /// <summary>All that is wrong.</summary>
    internal static IEnumerable<JobFault> Faults(LayoutJob job)
    {
        bool rolls = job.Stocks.All(s => s.Kind == JobStockKind.Roll), contours = JobDemands.IsByContour(job);
        bool tied = rolls && (!contours || job.Rules.RollsSideBySide == 2);
        foreach (JobFault fault in (IEnumerable<JobFault>)[.. Media(job, tied), .. Prices(job)])
            yield return fault;
        JobRules rules = job.Rules;
        if (rules.RollsSideBySide is < 1 or > 2)
            yield return new("/rules/rollsSideBySide", Invariant($"{rules.RollsSideBySide}"), "1 or 2");
        else if (rules.RollsSideBySide == 2 && !rolls)
            yield return new("/rules/rollsSideBySide", "2 with boards", "1, or rolls");
        if ((rules.LeastSectionMm > 0 || rules.LongestSectionMm > 0) && !rolls)
            yield return new(rules.LeastSectionMm > 0 ? "/rules/leastSectionMm" : "/rules/longestSectionMm", "sections of boards", "0, or rolls");
        if (rules.LongestSectionMm > 0 && rules.LongestSectionMm < rules.LeastSectionMm)
            yield return new("/rules/longestSectionMm", Invariant($"{rules.LongestSectionMm:0.###} mm"), Invariant($"at least the least, {rules.LeastSectionMm:0.###} mm"));
        if (!rolls)
            yield break;
        for (int i = 0; i < job.Stocks.Count; i++)
            if (job.Stocks[i].HeightMm - rules.LeadInMm - rules.LeadOutMm < 1)
                yield return new(Invariant($"/stocks/{i}/heightMm"), Invariant($"{job.Stocks[i].HeightMm:0.###} mm less leads of {rules.LeadInMm + rules.LeadOutMm:0.###} mm"), "at least 1 mm of roll between the leads");
        RollStock[] there = [.. job.Stocks.Where(s => s.Copies is not 0).Select(RollJob.StockOf)];
        if (rules.RollsSideBySide is 1 or 2 && !RollChecks.HasChoice(there, RollJob.TermsOf(job with { Pieces = [] })))
            yield return new("/rules/acrossMm", Invariant($"{rules.AcrossMm:0.###} mm for {string.Join(", ", job.Stocks.Select(s => Invariant($"{s.Id} {s.WidthMm:0.###} mm")))}"),
                rules.RollsSideBySide == 1 ? "a roll that the press takes" : Invariant($"two rolls that the press takes, {rules.CentreGapMm:0.###} mm apart"));
    }

    private static IEnumerable<JobFault> Media(LayoutJob job, bool may)
    {
        HashSet<string> ids = [.. job.Stocks.Select(s => s.Id)];
        for (int i = 0; i < job.Pieces.Count; i++)
            if (job.Pieces[i].StockId is { } id && !(may && ids.Contains(id)))
                yield return new(Invariant($"/pieces/{i}/stockId"), ids.Contains(id) ? Invariant($"{id} for a piece that is laid out by contours or on boards") : id, may ? "the id of a roll of the job" : "none: only rectangles on rolls, and what lies on two side by side, can be tied to one");
    }

    private static IEnumerable<JobFault> Prices(LayoutJob job)
    {
        for (int i = 0; i < job.Stocks.Count; i++)
            if (job.Stocks[i] is { PricePerMetre: > 0 } stock && (stock.Kind == JobStockKind.Board || stock.Price > 0))
                yield return new(Invariant($"/stocks/{i}/pricePerMetre"), stock.Kind == JobStockKind.Board ? "a price by the metre for a board" : "a price by the metre and one by the square metre", "one price");
    }
}
