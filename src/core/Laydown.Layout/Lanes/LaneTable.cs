namespace Laydown.Layout.Lanes;

/// <summary>Finds the starts of a number of equal lanes that leave the least open vacuum uncovered.</summary>
/// <remarks>
/// For one set of open zones the uncovered length is the length of these zones less what blanks cover of them; so the table keeps, for each
/// lay and each number of lanes, the most covered length of lanes that start at this lay or a later one. All sets of zones are gone through.
/// </remarks>
internal sealed class LaneTable(Belt belt, double width, int lanes)
{
    private const double Slack = 1e-6;

    private readonly double[] lays = [.. belt.LaysMm.Distinct().Order()];

    /// <summary>The best choice, or null where so many lanes cannot be laid and held.</summary>
    internal LaneChoice? Best()
    {
        LaneChoice? best = null;
        for (int set = 0; set < 1 << belt.Zones.Count; set++)
        {
            IReadOnlyList<int> open = [.. Enumerable.Range(0, belt.Zones.Count).Where(i => (set >> i & 1) == 1)];
            LaneChoice? choice = With(open);
            if (choice is not null && (best is null || IsBetter(choice, best)))
                best = choice;
        }

        return best;
    }

    private static bool IsBetter(LaneChoice one, LaneChoice other) =>
        (Math.Round(one.UncoveredMm, 6), one.Open.Count, one.StartsMm.Sum())
            .CompareTo((Math.Round(other.UncoveredMm, 6), other.Open.Count, other.StartsMm.Sum())) < 0;

    private LaneChoice? With(IReadOnlyList<int> open)
    {
        // covered[n, i]: most covered length of n lanes that start at lay i or later; below 0 where that cannot be.
        double[,] covered = new double[lanes + 1, lays.Length + 1];
        for (int n = 1; n <= lanes; n++)
        {
            covered[n, lays.Length] = -1;
            for (int i = lays.Length - 1; i >= 0; i--)
                covered[n, i] = Math.Max(covered[n, i + 1], Starting(covered, open, n, i));
        }

        if (covered[lanes, 0] < 0)
            return null;

        double length = open.Sum(z => belt.Zones[z].WidthMm);
        return new(Trace(covered, open), open, Math.Max(0, length - covered[lanes, 0]));
    }

    private double Starting(double[,] covered, IReadOnlyList<int> open, int n, int lay)
    {
        double start = lays[lay];
        if (start < -Slack || start + width > belt.WidthMm + Slack || !HoldRule.Holds(belt, open, start, width))
            return -1;

        double rest = covered[n - 1, Next(lay)];
        return rest < 0 ? -1 : rest + open.Sum(z => belt.Zones[z].Under(start, width));
    }

    private int Next(int lay)
    {
        int next = lay + 1;
        while (next < lays.Length && lays[next] < lays[lay] + width + belt.LaneGapMm - Slack)
            next++;

        return next;
    }

    private List<double> Trace(double[,] covered, IReadOnlyList<int> open)
    {
        List<double> starts = [];
        int lay = 0;
        for (int n = lanes; n > 0; n--)
        {
            // The first lay that still reaches the best value.
            while (Starting(covered, open, n, lay) < covered[n, lay] - Slack || Starting(covered, open, n, lay) < 0)
                lay++;

            starts.Add(lays[lay]);
            lay = Next(lay);
        }

        return starts;
    }
}
