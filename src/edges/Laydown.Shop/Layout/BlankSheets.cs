using Laydown.Layout.Boards;
using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Layout;

/// <summary>Lays the items of a run on its blanks, one piece on each, and the blanks in lanes on the belt: equal or of several sizes.</summary>
internal static class BlankSheets
{
    /// <summary>What a blank and its piece may differ, mm (common practice, no source).</summary>
    private const double ToleranceMm = 1;

    /// <summary>A sheet for each item. Where the run has blanks of several sizes each sheet names its own.</summary>
    internal static LayoutResult Of(FormedRun run)
    {
        if (run.Beside.Count == 0)
            return BlankLayout.Solve([.. run.Items.Select(i => RunPieces.WholeOf(i.Ready.Item, run.Stock))], run.Stock.Size, ToleranceMm);

        List<SheetLayout> sheets = [];
        List<UnplacedPiece> unplaced = [];
        foreach (FormedItem item in run.Items)
        {
            Stock blank = run.StockOf(item.Ready.Item);
            LayoutResult one = BlankLayout.Solve([RunPieces.WholeOf(item.Ready.Item, blank)], blank.Size, ToleranceMm);
            sheets.AddRange(one.Sheets.Select(s => s with { StockId = blank.Id }));
            unplaced.AddRange(one.Unplaced);
        }

        return new(sheets, unplaced);
    }

    /// <summary>The lanes: equal blanks share all, different ones have lanes of their own, in any order across the belt.</summary>
    internal static Reading<BeltPlace> OnBelt(FormedRun run, LayoutResult result, Belt belt)
    {
        IReadOnlyList<LaneBlank> blanks = [.. result.Sheets.GroupBy(s => s.StockId ?? run.Stock.Id, StringComparer.Ordinal)
            .Select(g => new LaneBlank(g.Key, g.First().Sheet, g.Sum(s => s.Repeats), MayTurn: true))];
        if (blanks.Count > LanePlan.MostBlanks)
            return Reading.Refused<BeltPlace>(new InputFault(run.Stock.Id, null, "lanes", Invariant($"{blanks.Count} sizes of blank"), Invariant($"at most {LanePlan.MostBlanks} side by side")));
        return blanks.Count == 1
            ? LanePlan.Solve(blanks[0].Id, blanks[0].Size, blanks[0].Count, mayTurn: true, belt)
            : LanePlan.Solve(string.Join(" and ", blanks.Select(b => b.Id)), blanks, anyOrder: true, belt);
    }
}
