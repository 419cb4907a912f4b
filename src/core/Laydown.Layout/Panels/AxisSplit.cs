namespace Laydown.Layout.Panels;

/// <summary>Parts one axis in panels: the fewest, then the cheapest seams, then the least spread of lengths; exact.</summary>
/// <remarks>Shortest path over starts of panels, from the far end back, so that of equal answers the first in order is taken.</remarks>
internal static class AxisSplit
{
    /// <summary>Most panels along one axis.</summary>
    internal const int MostPanels = 200;

    /// <summary>The best panels, or null where no seams can lie so.</summary>
    /// <param name="rules">What must be kept.</param>
    /// <param name="seams">What seams cost, over the same length.</param>
    internal static AxisAnswer? Solve(AxisRules rules, SeamProfile seams) => rules.Widths switch
    {
        PanelWidths.Equal => Equal(rules, seams),
        PanelWidths.FullAndRest => FullAndRest(rules, seams),
        PanelWidths.Given => Given(rules, seams),
        _ => Free(rules, seams),
    };

    private static AxisAnswer? Free(AxisRules rules, SeamProfile seams)
    {
        int count = FewestPanels.Count(rules, seams);
        return count == 0 ? null : new AxisPath(rules, seams, Alike(count, rules.Least), Alike(count, rules.Most)).Best();
    }

    // Each base length by itself: panels of one length, or one step longer.
    private static AxisAnswer? Equal(AxisRules rules, SeamProfile seams)
    {
        AxisAnswer? best = null;
        for (int count = 1; count <= MostPanels && best is null; count++)
        {
            long least = rules.Length + ((count - 1L) * rules.OverlapLeast), most = rules.Length + ((count - 1L) * rules.OverlapMost);
            int from = (int)Math.Max(rules.Least, (least / count) - 1), to = (int)Math.Min(rules.Most, most / count);
            for (int each = from; each <= to; each++)
            {
                AxisAnswer? answer = new AxisPath(rules, seams, Alike(count, each), Alike(count, Math.Min(each + 1, rules.Most))).Best();
                if (answer?.IsBetterThan(best) == true)
                    best = answer;
            }

            if ((long)count * rules.Least > rules.Length + ((count - 1L) * rules.OverlapMost))
                break;
        }

        return best;
    }

    private static AxisAnswer? FullAndRest(AxisRules rules, SeamProfile seams)
    {
        AxisAnswer? best = null;
        for (int count = 1; count <= MostPanels && best is null; count++)
        {
            int[] least = Alike(count, rules.Most);
            least[^1] = rules.Least;
            best = new AxisPath(rules, seams, least, Alike(count, rules.Most)).Best();
            if (((count - 2L) * rules.Most) - ((count - 1L) * rules.OverlapMost) > rules.Length)
                break;
        }

        return best;
    }

    private static AxisAnswer? Given(AxisRules rules, SeamProfile seams) =>
        rules.Given.Any(g => g < rules.Least || g > rules.Most) ? null : new AxisPath(rules, seams, [.. rules.Given], [.. rules.Given]).Best();

    private static int[] Alike(int count, int value)
    {
        int[] all = new int[count];
        Array.Fill(all, value);
        return all;
    }
}
