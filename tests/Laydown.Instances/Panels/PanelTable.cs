namespace Laydown.Instances.Panels;

/// <summary>Count, cost and spread of the best panels by a plain table over all places, panel after panel: for axes too long to try all.</summary>
public static class PanelTable
{
    /// <summary>The best values, or null where no panels can be.</summary>
    public static (int Count, long Cost, long Spread)? Best(PanelInstance axis, int mostPanels)
    {
        long[] sums = new long[axis.Length + 1];
        int[] barred = new int[axis.Length + 1];
        for (int i = 0; i < axis.Length; i++)
            (sums[i + 1], barred[i + 1]) = (sums[i] + Math.Max(0, axis.Cost[i]), barred[i] + (axis.Cost[i] < 0 ? 1 : 0));
        for (int count = 1; count <= mostPanels; count++)
        {
            (long Cost, long Spread)? best = null;
            foreach ((int least, int most) in Bases(axis, count))
            {
                (long Cost, long Spread)? found = Of(axis, count, sums, barred, least, most);
                if (found is { } f && (best is null || f.CompareTo(best.Value) < 0))
                    best = f;
            }

            if (best is { } b)
                return (count, b.Cost, b.Spread);
        }

        return null;
    }

    // Equal lengths: each base by itself. Everything else: one base.
    private static IEnumerable<(int Least, int Most)> Bases(PanelInstance axis, int count)
    {
        if (axis.Kind != 0)
            return [(axis.Least, axis.Most)];
        long least = (axis.Length + ((count - 1L) * axis.OverlapLeast)) / count, most = (axis.Length + ((count - 1L) * axis.OverlapMost)) / count;
        return Enumerable.Range((int)least - 2, (int)(most - least) + 5).Where(b => b >= axis.Least && b <= axis.Most).Select(b => (b, Math.Min(b + 1, axis.Most)));
    }

    private static (long Cost, long Spread)? Of(PanelInstance axis, int count, long[] sums, int[] barred, int least, int most)
    {
        SortedDictionary<int, (long Cost, long Spread)> starts = new() { [0] = (0, 0) };
        for (int panel = 0; panel < count; panel++)
        {
            (int from, int to) = axis.Kind switch
            {
                2 when panel < count - 1 => (axis.Most, axis.Most),
                3 => axis.Given.Count == count && axis.Given[panel] >= axis.Least && axis.Given[panel] <= axis.Most ? (axis.Given[panel], axis.Given[panel]) : (1, 0),
                _ => (least, most),
            };
            (long Cost, long Spread)?[] ends = new (long, long)?[axis.Length + 1];
            foreach ((int start, (long cost, long spread)) in starts)
            {
                for (int end = start + from; end <= Math.Min(axis.Length, start + to); end++)
                {
                    (long, long) value = (cost, spread + axis.Spread([end - start], count));
                    if (ends[end] is not { } e || value.CompareTo(e) < 0)
                        ends[end] = value;
                }
            }

            if (panel == count - 1)
                return ends[axis.Length];
            starts = Next(axis, ends, sums, barred);
        }

        return null;
    }

    private static SortedDictionary<int, (long Cost, long Spread)> Next(PanelInstance axis, (long Cost, long Spread)?[] ends, long[] sums, int[] barred)
    {
        SortedDictionary<int, (long Cost, long Spread)> next = [];
        for (int end = 1; end < axis.Length; end++)
        {
            for (int start = end - axis.OverlapMost; ends[end] is { } e && start <= end - axis.OverlapLeast; start++)
            {
                if (start <= 0 || start >= axis.Length)
                    continue;
                int from = Math.Max(0, Math.Min(end, start) - 1), to = Math.Min(axis.Length, Math.Max(end, start) + 1);
                bool near = axis.Wanted.Count == 0 || axis.Wanted.Any(w => Math.Abs(end + start - (2 * w)) <= 2 * axis.Slack);
                if (barred[to] > barred[from] || (!near && axis.OnlyWanted))
                    continue;
                (long, long) value = (e.Cost + sums[to] - sums[from] + (near ? 0 : axis.Elsewhere), e.Spread);
                if (!next.TryGetValue(start, out (long, long) there) || value.CompareTo(there) < 0)
                    next[start] = value;
            }
        }

        return next;
    }
}
