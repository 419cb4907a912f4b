namespace Laydown.Instances.Panels;

/// <summary>The best panels by trying all: for axes of a few dozen steps.</summary>
public static class PanelBrute
{
    /// <summary>The best, or null where none can be: fewest panels, then least cost, then least spread, then the first in order of ends and starts.</summary>
    public static PanelAnswer? Best(PanelInstance axis)
    {
        for (int count = 1; count <= axis.Length; count++)
        {
            PanelAnswer? best = null;
            Try(axis, count, [0], [], 0, ref best);
            if (best is not null)
                return best;
        }

        return null;
    }

    private static void Try(PanelInstance axis, int count, List<int> starts, List<int> ends, long cost, ref PanelAnswer? best)
    {
        int from = starts[^1];
        bool last = starts.Count == count;
        for (int end = last ? axis.Length : from + 1; end <= axis.Length; end++)
        {
            if (!Allowed(axis, count, starts, ends, end - from))
                continue;
            ends.Add(end);
            if (last)
                Keep(axis, count, starts, ends, cost, ref best);
            for (int start = end - axis.OverlapMost; !last && start <= end - axis.OverlapLeast; start++)
            {
                long seam = start > 0 && start < axis.Length && end < axis.Length ? axis.Seam(end, start) : -1;
                if (seam < 0)
                    continue;
                starts.Add(start);
                Try(axis, count, starts, ends, cost + seam, ref best);
                starts.RemoveAt(starts.Count - 1);
            }

            ends.RemoveAt(ends.Count - 1);
        }
    }

    private static bool Allowed(PanelInstance axis, int count, List<int> starts, List<int> ends, int length)
    {
        int number = ends.Count;
        if (length < axis.Least || length > axis.Most)
            return false;
        return axis.Kind switch
        {
            0 => ends.Select((e, i) => e - starts[i]).All(l => Math.Abs(l - length) <= 1),
            2 => number == count - 1 || length == axis.Most,
            3 => axis.Given.Count == count && axis.Given[number] == length,
            _ => true,
        };
    }

    private static void Keep(PanelInstance axis, int count, List<int> starts, List<int> ends, long cost, ref PanelAnswer? best)
    {
        long spread = axis.Spread(ends.Select((e, i) => e - starts[i]), count);
        if (best is null || (cost, spread).CompareTo((best.Cost, best.Spread)) < 0)
            best = new([.. starts], [.. ends], cost, spread);
    }
}
