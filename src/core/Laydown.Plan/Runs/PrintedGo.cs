using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>What the press prints in one go, and how often: a sheet, a row of blanks in their lanes, or two rolls side by side.</summary>
/// <param name="Extent">Width across the belt and length along the feed of what is printed, mm, each at least 1 mm.</param>
/// <param name="Times">How often; at least 1.</param>
public sealed record PrintedGo(SizeMm Extent, int Times)
{
    /// <summary>All goes of a run.</summary>
    /// <remarks>
    /// Different blanks lie one behind the other in lanes of their own: the longest lane is printed from its first to its last blank, and the
    /// carriage crosses all lanes. Two rolls advance together: the longer is printed from end to end, and the carriage crosses both.
    /// </remarks>
    public static IReadOnlyList<PrintedGo> Of(RunRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        BeltPlace belt = request.Belt;
        if (request.Stock.Kind == StockKind.Roll && belt.Lanes.Count > 1)
            return [new(Together(request), 1)];
        if (request.Stock.Kind == StockKind.Blank && belt.Lanes.Any(l => l.FeedMm is not null))
        {
            Lane longest = belt.Lanes.MaxBy(l => l.Blanks * (l.FeedMm ?? belt.FeedMm))!;
            double across = belt.Lanes.Max(l => l.StartMm + l.WidthMm) - belt.Lanes.Min(l => l.StartMm);
            return [new(new(Math.Max(1, across), Math.Max(1, longest.FeedMm ?? belt.FeedMm)), longest.Blanks)];
        }

        int lanes = request.Stock.Kind == StockKind.Blank ? Math.Max(1, belt.Lanes.Count) : 1;
        return [.. request.Sheets.Select(s => new PrintedGo(PrintedExtent.Of(s, belt, request.Stock), (s.Repeats + lanes - 1) / lanes))];
    }

    // From the first printed edge of one roll to the last of the other; each sheet lies in the lane of its number.
    private static SizeMm Together(RunRequest request)
    {
        (Lane Lane, SheetLayout Sheet)[] rolls = [.. request.Belt.Lanes.Zip(request.Sheets)];
        double left = rolls.Min(r => r.Lane.StartMm + r.Sheet.Placements.Min(p => p.Place.XMm));
        double right = rolls.Max(r => r.Lane.StartMm + r.Sheet.Placements.Max(p => p.Place.RightMm));
        double from = rolls.Min(r => r.Sheet.Placements.Min(p => p.Place.YMm)), to = rolls.Max(r => r.Sheet.Placements.Max(p => p.Place.TopMm));
        return new(Math.Max(1, right - left), Math.Max(1, to - from));
    }
}
