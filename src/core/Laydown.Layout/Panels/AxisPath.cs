namespace Laydown.Layout.Panels;

/// <summary>The best panels of a count that is known, each with a least and a most length of its own.</summary>
internal sealed class AxisPath(AxisRules rules, SeamProfile seams, int[] least, int[] most)
{
    private const long None = long.MaxValue;

    private readonly int count = least.Length;
    private readonly long target = rules.Length + ((least.Length - 1L) * rules.OverlapLeast);

    // For each panel: the window of its starts and the best end for each; for each end the best next start.
    private readonly int[][] endOf = new int[least.Length][];
    private readonly int[][] nextOf = new int[least.Length][];
    private readonly int[] firstStart = new int[least.Length];
    private readonly int[] firstEnd = new int[least.Length];
    private readonly bool[][] reached = new bool[least.Length][];

    /// <summary>The best panels, or null where there are none.</summary>
    internal AxisAnswer? Best()
    {
        if (!Windows(out int[] lastStart) || !Reach(lastStart))
            return null;
        Layer ahead = Last(lastStart[count - 1]);
        for (int panel = count - 2; panel >= 0 && ahead.First <= ahead.End; panel--)
            ahead = Starts(panel, lastStart[panel], Ends(panel, ahead));
        return ahead.First <= ahead.End && ahead.Cost[0] != None ? Told(ahead) : null;
    }

    // Starts that panels could have from what lies before and behind them, whatever seams cost.
    private bool Windows(out int[] last)
    {
        last = new int[count];
        for (int i = 1; i < count; i++)
        {
            firstStart[i] = Math.Max(1, firstStart[i - 1] + least[i - 1] - rules.OverlapMost);
            last[i] = (int)Math.Min(rules.Length - 1L, (long)last[i - 1] + most[i - 1] - rules.OverlapLeast);
        }

        long from = rules.Length - (long)most[^1], to = rules.Length - least[^1];
        for (int i = count - 1; i >= 0; i--)
        {
            firstStart[i] = (int)Math.Max(firstStart[i], from);
            last[i] = (int)Math.Min(last[i], to);
            if (firstStart[i] > last[i])
                return false;
            if (i == 0)
                break;
            from = firstStart[i] + (long)rules.OverlapLeast - most[i - 1];
            to = last[i] + (long)rules.OverlapMost - least[i - 1];
        }

        return true;
    }

    // Starts that seams let be reached from the first panel on; most axes that cannot be parted show here.
    private bool Reach(int[] lastStart)
    {
        reached[0] = [true];
        for (int i = 1; i < count; i++)
        {
            bool[] next = reached[i] = new bool[lastStart[i] - firstStart[i] + 1];
            int[] ends = Ends(i - 1);
            bool any = false;
            for (int end = 1, open = 0; end < rules.Length; end++)
            {
                open += ends[end];
                int from = Math.Max(firstStart[i], end - rules.OverlapMost), to = Math.Min(lastStart[i], end - rules.OverlapLeast);
                for (int start = from; open > 0 && start <= to; start++)
                    any |= next[start - firstStart[i]] |= seams.Of(end, start) >= 0;
            }

            if (!any)
                return false;
        }

        return true;
    }

    // How many reached starts of a panel allow each end, as differences.
    private int[] Ends(int panel)
    {
        int[] ends = new int[rules.Length + 2];
        for (int at = 0; at < reached[panel].Length; at++)
        {
            int start = firstStart[panel] + at;
            if (!reached[panel][at] || start + least[panel] > rules.Length)
                continue;
            ends[start + least[panel]]++;
            ends[Math.Min(rules.Length, start + most[panel]) + 1]--;
        }

        return ends;
    }

    private Layer Last(int lastStart)
    {
        Layer layer = new(firstStart[^1], lastStart);
        endOf[^1] = new int[layer.Cost.Length];
        for (int start = layer.First; start <= layer.End; start++)
            (layer.Cost[start - layer.First], layer.Spread[start - layer.First], endOf[^1][start - layer.First]) = (0, Spread(rules.Length - start), rules.Length);
        return layer;
    }

    // Best of the seams after each end of a panel.
    private Layer Ends(int panel, Layer next)
    {
        Layer ends = new(Math.Max(1, next.First + rules.OverlapLeast), Math.Min(rules.Length - 1, next.End + rules.OverlapMost));
        firstEnd[panel] = ends.First;
        int[] choice = nextOf[panel] = new int[ends.Cost.Length];
        for (int end = ends.First; end <= ends.End; end++)
        {
            long cost = None, spread = None;
            int from = Math.Max(next.First, end - rules.OverlapMost), to = Math.Min(next.End, end - rules.OverlapLeast);
            for (int start = from; start <= to; start++)
            {
                long ahead = next.Cost[start - next.First], seam = ahead == None ? -1 : seams.Of(end, start);
                if (seam < 0 || ahead + seam > cost || (ahead + seam == cost && next.Spread[start - next.First] >= spread))
                    continue;
                (cost, spread, choice[end - ends.First]) = (ahead + seam, next.Spread[start - next.First], start);
            }

            (ends.Cost[end - ends.First], ends.Spread[end - ends.First]) = (cost, spread);
        }

        return ends.Trimmed();
    }

    // Best end for each start of a panel.
    private Layer Starts(int panel, int lastStart, Layer ends)
    {
        Layer layer = new(firstStart[panel], lastStart);
        int[] choice = endOf[panel] = new int[layer.Cost.Length];
        for (int start = layer.First; start <= layer.End; start++)
        {
            int from = Math.Max(ends.First, start + least[panel]), to = Math.Min(ends.End, start + most[panel]);
            long cost = None, spread = None;
            for (int end = from; reached[panel][start - layer.First] && end <= to; end++)
            {
                long ahead = ends.Cost[end - ends.Origin];
                if (ahead > cost || ahead == None)
                    continue;
                long wide = ends.Spread[end - ends.Origin] + Spread(end - start);
                if (ahead == cost && wide >= spread)
                    continue;
                (cost, spread, choice[start - layer.First]) = (ahead, wide, end);
            }

            (layer.Cost[start - layer.First], layer.Spread[start - layer.First]) = (cost, spread);
        }

        return layer;
    }

    private AxisAnswer Told(Layer first)
    {
        int[] starts = new int[count], ends = new int[count];
        for (int i = 0; i < count; i++)
        {
            ends[i] = endOf[i][starts[i] - firstStart[i]];
            if (i + 1 < count)
                starts[i + 1] = nextOf[i][ends[i] - firstEnd[i]];
        }

        return new(starts, ends, first.Cost[0], first.Spread[0]);
    }

    private long Spread(int length)
    {
        long off = ((long)count * length) - target;
        return off * off;
    }

    /// <summary>Best cost and spread for the places from First to End; arrays start at Origin.</summary>
    private sealed class Layer(int first, int end)
    {
        public int Origin { get; } = first;

        public int First { get; private set; } = first;

        public int End { get; private set; } = end;

        public long[] Cost { get; } = new long[Math.Max(0, end - first + 1)];

        public long[] Spread { get; } = new long[Math.Max(0, end - first + 1)];

        /// <summary>Without the places at both ends that lead nowhere.</summary>
        public Layer Trimmed()
        {
            while (First <= End && Cost[First - Origin] == None)
                First++;
            while (End >= First && Cost[End - Origin] == None)
                End--;
            return this;
        }
    }
}
