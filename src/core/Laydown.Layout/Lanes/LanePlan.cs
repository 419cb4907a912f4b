using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Lanes;

/// <summary>Lays blanks side by side on the belt: side lays, open zones, lanes.</summary>
public static class LanePlan
{
    /// <summary>The shortest feed for all blanks; then the least open vacuum under no blank, the fewest open zones, the place nearest the belt's origin.</summary>
    /// <param name="name">What the blank is called in a refusal, such as the stock's id.</param>
    /// <param name="blank">Size of a blank, mm.</param>
    /// <param name="count">How many blanks; at least 1.</param>
    /// <param name="mayTurn">Whether blanks may lie turned.</param>
    /// <param name="belt">The belt.</param>
    /// <returns>The place, or why no blank can be laid and held.</returns>
    /// <remarks>Exact: every set of open zones with every choice of lays is looked at, by a table over the lays.</remarks>
    /// <exception cref="ArgumentException">The belt has no lay, more than 16 zones, or overlapping zones.</exception>
    public static Reading<BeltPlace> Solve(string name, SizeMm blank, int count, bool mayTurn, Belt belt)
    {
        BeltChecks.Demand(belt);
        Bounds.Within(count, 1, 1_000_000);
        int lanes = Math.Min(Math.Max(1, belt.MaxLanes), count);
        IReadOnlyList<bool> ways = mayTurn ? [false, true] : [false];
        IEnumerable<(BeltPlace Place, double Feed)> places = ways
            .SelectMany(turned => Enumerable.Range(1, lanes).Select(n => (Turned: turned, Lanes: n)))
            .Select(w => (Place: Lay(blank, count, w.Turned, w.Lanes, belt), w.Lanes))
            .Where(p => p.Place is not null)
            .Select(p => (p.Place!, Feed: p.Place!.FeedMm * Math.Ceiling(count / (double)p.Lanes)));

        IReadOnlyList<BeltPlace> sorted = [.. places
            .OrderBy(p => p.Feed).ThenBy(p => p.Place.UncoveredMm).ThenBy(p => p.Place.OpenZones.Count).ThenBy(p => p.Place.Turned)
            .Select(p => p.Place)];
        return sorted.Count > 0 ? Reading.Of(sorted[0]) : Reading.Refused<BeltPlace>(BeltChecks.NoPlace(name, blank, mayTurn, belt));
    }

    private static BeltPlace? Lay(SizeMm blank, int count, bool turned, int lanes, Belt belt)
    {
        SizeMm lying = turned ? blank.Turned() : blank;
        if (lying.HeightMm > belt.MaxFeedMm + 1e-6)
            return null;

        LaneChoice? choice = new LaneTable(belt, lying.WidthMm, lanes).Best();
        return choice is null ? null : BeltChecks.Place(belt, lying, turned, choice, count, "pins");
    }
}
