using Laydown.Layout.Packing;
using Laydown.Measures;

namespace Laydown.Layout.Lanes;

/// <summary>Different blanks side by side: which of them turn and how many lanes each has, so that the longest lane is as short as can be.</summary>
internal sealed class LaneSet
{
    private readonly IReadOnlyList<LaneBlank> blanks;
    private readonly bool anyOrder;
    private readonly Belt belt;
    private readonly int mostLanes;
    private readonly Dictionary<int, LaneHold?[]> known = [];
    private readonly IReadOnlyList<int> turns;

    internal LaneSet(IReadOnlyList<LaneBlank> blanks, bool anyOrder, Belt belt)
    {
        (this.blanks, this.anyOrder, this.belt) = (blanks, anyOrder, belt);
        mostLanes = Math.Clamp(belt.MaxLanes, 1, LanePlan.MostBlanks);
        turns = [.. Enumerable.Range(0, 1 << blanks.Count).Where(t => blanks.Select((b, i) => (b, i)).All(p => (t >> p.i & 1) == 0 || p.b.MayTurn))];
    }

    /// <summary>The best laying with the turned blanks as bits, or null where the blanks cannot lie side by side.</summary>
    internal (LaneChoice Choice, int Turned)? Best()
    {
        double[] feeds = [.. Feeds().Distinct().Order()];

        // A longer feed needs no more lanes, so what can be laid within one can be laid within every longer one.
        (int low, int high) = (0, feeds.Length);
        (LaneChoice, int)? best = null;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (Within(feeds[middle]) is { } found)
                (best, high) = (found, middle);
            else
                low = middle + 1;
        }

        return best;
    }

    /// <summary>Size of a blank as it lies.</summary>
    internal SizeMm Lying(int blank, int turned) => (turned >> blank & 1) == 1 ? blanks[blank].Size.Turned() : blanks[blank].Size;

    private IEnumerable<double> Feeds() =>
        from b in Enumerable.Range(0, blanks.Count)
        from turned in blanks[b].MayTurn ? (bool[])[false, true] : [false]
        from lanes in Enumerable.Range(1, Math.Min(mostLanes, blanks[b].Count))
        select Feed(turned ? blanks[b].Size.Turned() : blanks[b].Size, blanks[b].Count, lanes);

    private static double Feed(SizeMm lying, int count, int lanes) => lying.HeightMm * ((count + lanes - 1) / lanes);

    private (LaneChoice Choice, int Turned)? Within(double feed)
    {
        (LaneChoice Choice, int Turned)? best = null;
        foreach (int turned in turns)
        {
            IReadOnlyList<LaneType>? types = Types(turned, feed);
            LaneChoice? choice = types is null ? null : new LaneSearch(belt, types, anyOrder, mostLanes, known).Best();
            if (choice is not null && (best is null || choice.Cost.CompareTo(best.Value.Choice.Cost) < 0))
                best = (choice, turned);
        }

        return best;
    }

    private List<LaneType>? Types(int turned, double feed)
    {
        List<LaneType> types = [];
        for (int b = 0; b < blanks.Count; b++)
        {
            SizeMm lying = Lying(b, turned);
            int most = Math.Min(mostLanes, blanks[b].Count);
            int least = Enumerable.Range(1, most).FirstOrDefault(n => Feed(lying, blanks[b].Count, n) <= feed);
            if (least == 0 || lying.HeightMm > belt.MaxFeedMm + 1e-6)
                return null;
            types.Add(new(Micro.Up(lying.WidthMm), least, most));
        }

        int spare = mostLanes - types.Sum(t => t.Least);
        double width = types.Sum(t => t.Least * ((t.Width / 1000.0) + belt.LaneGapMm)) - belt.LaneGapMm;
        return spare < 0 || width > belt.WidthMm + 1e-6 ? null : [.. types.Select(t => t with { Most = Math.Min(t.Most, t.Least + spare) })];
    }
}
