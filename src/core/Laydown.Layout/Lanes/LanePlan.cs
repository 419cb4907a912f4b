using Laydown.Layout.Packing;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Lanes;

/// <summary>Lays blanks side by side on the belt: side lays, open zones, lanes.</summary>
public static class LanePlan
{
    /// <summary>Most different blanks side by side, and most lanes of different blanks.</summary>
    public const int MostBlanks = 8;

    /// <summary>The shortest feed for all blanks; then the least open vacuum under no blank, the fewest open zones, the place nearest the load side.</summary>
    /// <param name="name">What the blank is called in a refusal, such as the stock's id.</param>
    /// <param name="blank">Size of a blank, mm.</param>
    /// <param name="count">How many blanks; at least 1.</param>
    /// <param name="mayTurn">Whether blanks may lie turned.</param>
    /// <param name="belt">The belt.</param>
    /// <returns>The place, or why no blank can be laid and held.</returns>
    /// <remarks>Exact: nothing that can be laid and held is better.</remarks>
    /// <exception cref="ArgumentException">The belt has no lay, more than 16 zones, or overlapping zones.</exception>
    public static Reading<BeltPlace> Solve(string name, SizeMm blank, int count, bool mayTurn, Belt belt)
    {
        BeltChecks.Demand(belt);
        Bounds.Within(count, 1, 1_000_000);
        int lanes = Math.Min(Math.Max(1, belt.MaxLanes), count);
        IReadOnlyList<bool> ways = mayTurn ? [false, true] : [false];
        Dictionary<int, LaneHold?[]> known = [];
        IEnumerable<(LaneChoice? Choice, SizeMm Lying, bool Turned, double Feed)> places =
            from turned in ways
            from n in Enumerable.Range(1, lanes)
            let lying = turned ? blank.Turned() : blank
            select (Lay(lying, n, belt, known), lying, turned, lying.HeightMm * Math.Ceiling(count / (double)n));

        (LaneChoice? choice, SizeMm size, bool isTurned, _) = places.Where(p => p.Choice is not null)
            .OrderBy(p => p.Feed).ThenBy(p => p.Choice!.Cost.Uncovered).ThenBy(p => p.Choice!.Open.Count).ThenBy(p => p.Turned).ThenBy(p => p.Choice!.Types.Count)
            .FirstOrDefault();
        return choice is not null
            ? Reading.Of(BeltChecks.Place(belt, size, isTurned, choice, count, "pins"))
            : Reading.Refused<BeltPlace>(BeltChecks.NoPlace(name, blank, mayTurn, belt));
    }

    /// <summary>Different blanks side by side, each size in lanes of its own: the longest lane as short as can be; then as for equal blanks.</summary>
    /// <param name="name">What they are called together in a refusal, such as the run's id.</param>
    /// <param name="blanks">Blanks, at most <see cref="MostBlanks"/> different ones.</param>
    /// <param name="anyOrder">Whether they may lie in any order across the belt; else in the order given, from the belt's origin.</param>
    /// <param name="belt">The belt.</param>
    /// <returns>The place, whose lanes tell which blanks they take; or why they cannot lie side by side.</returns>
    /// <remarks>Exact: nothing that can be laid and held is better.</remarks>
    /// <exception cref="ArgumentException">No blanks, an id twice, a belt without a lay, more than 16 zones, or overlapping zones.</exception>
    public static Reading<BeltPlace> Solve(string name, IReadOnlyList<LaneBlank> blanks, bool anyOrder, Belt belt)
    {
        BeltChecks.Demand(belt);
        Bounds.NotEmpty(blanks);
        Bounds.Within(blanks.Count, 1, MostBlanks, nameof(blanks));
        foreach (LaneBlank blank in blanks)
            Bounds.Within(blank.Count, 1, 1_000_000, nameof(blanks));
        if (blanks.Select(b => b.Id).Distinct(StringComparer.Ordinal).Count() < blanks.Count)
            throw new ArgumentException("Found an id twice; wanted one row for each blank.", nameof(blanks));

        foreach (LaneBlank blank in blanks)
            if (!blank.Size.FitsIn(new(belt.WidthMm, belt.MaxFeedMm)) && !(blank.MayTurn && blank.Size.Turned().FitsIn(new(belt.WidthMm, belt.MaxFeedMm))))
                return Reading.Refused<BeltPlace>(BeltChecks.NoPlace(blank.Id, blank.Size, blank.MayTurn, belt));

        LaneSet set = new(blanks, anyOrder, belt);
        return set.Best() is { } best
            ? Reading.Of(BeltChecks.Place(belt, blanks, set, best.Choice, best.Turned))
            : Reading.Refused<BeltPlace>(BeltChecks.NoPlaceTogether(name, blanks, anyOrder, belt));
    }

    private static LaneChoice? Lay(SizeMm lying, int lanes, Belt belt, Dictionary<int, LaneHold?[]> known) => lying.HeightMm > belt.MaxFeedMm + 1e-6
        ? null
        : new LaneSearch(belt, [new(Micro.Up(lying.WidthMm), lanes, lanes)], anyOrder: true, lanes, known).Best();
}
