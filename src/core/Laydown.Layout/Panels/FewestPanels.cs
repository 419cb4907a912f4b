namespace Laydown.Layout.Panels;

/// <summary>How many panels of free length an axis needs at least: waves of starts, each place looked at once.</summary>
internal static class FewestPanels
{
    /// <summary>The least count, or 0 where the far end is never reached.</summary>
    internal static int Count(AxisRules rules, SeamProfile seams)
    {
        bool[] seen = new bool[rules.Length];
        List<int> starts = [0];
        seen[0] = true;
        for (int count = 1; count <= AxisSplit.MostPanels && starts.Count > 0; count++)
        {
            if (starts.Exists(s => rules.Length - s >= rules.Least && rules.Length - s <= rules.Most))
                return count;
            starts = Next(starts, seen, rules, seams);
        }

        return 0;
    }

    private static List<int> Next(List<int> starts, bool[] seen, AxisRules rules, SeamProfile seams)
    {
        // How many of this wave's panels can end at each place, as differences.
        int[] ends = new int[rules.Length + 2];
        foreach (int start in starts)
        {
            if (start + rules.Least > rules.Length)
                continue;
            ends[start + rules.Least]++;
            ends[Math.Min(rules.Length, start + rules.Most) + 1]--;
        }

        List<int> next = [];
        int open = 0;
        for (int end = 0; end < rules.Length; end++)
        {
            open += ends[end];
            for (int overlap = rules.OverlapMost; open > 0 && overlap >= rules.OverlapLeast; overlap--)
            {
                int start = end - overlap;
                if (start > 0 && start < rules.Length && !seen[start] && seams.Of(end, start) >= 0)
                {
                    seen[start] = true;
                    next.Add(start);
                }
            }
        }

        return next;
    }
}
