using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Layout;

/// <summary>Blanks of several sizes side by side in the lanes of one run where they can be laid and held so and it saves press time; else a run for each size.</summary>
internal static class BlankLanes
{
    /// <summary>The run itself, or runs of one size that hold its items between them.</summary>
    internal static IReadOnlyList<FormedRun> Split(FormedRun run, CancellationToken cancellation)
    {
        if (run.Stock.Kind != StockKind.Blank || run.Beside.Count == 0)
            return [run];

        FormedRun[] apart = [.. run.Items.GroupBy(i => run.StockOf(i.Ready.Item).Id, StringComparer.Ordinal).Select(g => run with
        {
            Stock = run.StockOf(g.First().Ready.Item),
            Items = [.. g],
            Beside = [],
        })];
        if (CostOf(run, cancellation) is not { } together)
            return apart;
        decimal?[] costs = [.. apart.Select(r => CostOf(r, cancellation))];
        if (costs.All(c => c is not null) && together >= costs.Sum())
            return apart;
        return [run with
        {
            Because = [.. run.Because, Invariant($"Blanks of {apart.Length} sizes lie side by side in lanes of their own: one set-up instead of {apart.Length}.")],
        }];
    }

    // Price of set-up and printing; null where the blanks cannot be laid out or laid on the belt.
    private static decimal? CostOf(FormedRun run, CancellationToken cancellation)
    {
        Reading<LaidOut> laid = SheetLayouts.Of(run, RollWidths.NoContours, cancellation, tries: 0);
        if (!laid.IsTaken || laid.Value.Unplaced.Count > 0)
            return null;
        BeltPlace belt = laid.Value.Belt;
        Lane longest = belt.Lanes.MaxBy(l => l.Blanks * (l.FeedMm ?? belt.FeedMm))!;
        double across = belt.Lanes.Max(l => l.StartMm + l.WidthMm) - belt.Lanes.Min(l => l.StartMm);
        return PressMinutes.SetUp(run.Press) + PressMinutes.Printing(run, new(across, longest.FeedMm ?? belt.FeedMm), longest.Blanks);
    }
}
