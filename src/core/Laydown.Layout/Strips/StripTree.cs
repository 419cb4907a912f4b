using Laydown.Layout.Packing;

namespace Laydown.Layout.Strips;

/// <summary>Fills a strip of few pieces up to a height exactly, by going through fillings with little waste, the likelier first, over and over with another chance.</summary>
/// <remarks>
/// The lowest gap takes a piece at its left, or is given up. A way is left as soon as its waste passes what the height allows; the waste
/// that is sure counts too: the widths of pieces that could stand on a gap's floor add up to certain sums only, and what the best sum
/// leaves bare stays bare up to the lower neighbour or the lowest piece. A walk over orders does not reach fillings without waste that
/// go against the score of its placing; this does.
/// </remarks>
internal sealed class StripTree
{
    private const int MostPieces = 40, MostUnits = 4096;
    private const long NodesOfATry = 3000;

    private readonly StripPieces pieces;
    private readonly int width, unit, words;
    private readonly Chance chance;

    // Kinds: ways of lying of equal copies, large ones first; kin: equal copies.
    private readonly int[] kindWay, kindKin, kindWidth, kindHeight;
    private readonly int[][] kin;
    private readonly int[] left, stepX, stepY, kept, ways, xs, ys;
    private int steps, height, placed;
    private long nodes, allowed;

    internal StripTree(StripPieces pieces, StripProblem problem, long seed)
    {
        (this.pieces, width, chance) = (pieces, problem.Width, new(seed));
        unit = Unit(pieces);
        words = (width / unit / 64) + 1;
        kin = [.. Enumerable.Range(0, pieces.Count).GroupBy(SizeOf).Select(g => g.ToArray())];
        int[] kinds = [.. Enumerable.Range(0, kin.Length).SelectMany(k => Enumerable.Range(0, pieces.Ways).Select(w => (kin[k][0] * pieces.Ways) + w))
            .Where(w => pieces.Width[w] > 0).OrderByDescending(w => (long)pieces.Width[w] * pieces.Height[w])];
        kindWay = kinds;
        kindKin = [.. kinds.Select(w => Array.FindIndex(kin, k => k[0] == w / pieces.Ways))];
        kindWidth = [.. kinds.Select(w => pieces.Width[w])];
        kindHeight = [.. kinds.Select(w => pieces.Height[w])];
        left = new int[kin.Length];
        stepX = new int[pieces.Count + 4];
        stepY = new int[pieces.Count + 4];
        kept = new int[((3 * pieces.Count) + 4) * 2 * stepX.Length];
        ways = new int[pieces.Count];
        xs = new int[pieces.Count];
        ys = new int[pieces.Count];
    }

    /// <summary>Whether a problem is small enough, and its widths are coarse enough for sums of them to tell something.</summary>
    internal static bool Serves(StripPieces pieces, StripProblem problem) =>
        pieces.Count <= MostPieces && problem.BarWidth == 0 && problem.Width / Unit(pieces) <= MostUnits;

    /// <summary>One try at a height; null where it found no filling, which proves nothing.</summary>
    internal StripRecord? Try(int upTo)
    {
        (height, nodes, placed, steps, stepX[0], stepY[0]) = (upTo, 0, 0, 1, 0, 0);
        allowed = ((long)width * height) - pieces.Area;
        for (int k = 0; k < kin.Length; k++)
            left[k] = kin[k].Length;
        return allowed >= 0 && Fill(0, 0) ? Record() : null;
    }

    private static int Unit(StripPieces pieces)
    {
        int unit = 0;
        foreach (int w in pieces.Width)
            for (int other = w; other > 0;)
                (unit, other) = (other, unit % other);
        return Math.Max(1, unit);
    }

    private (int, int, int, int) SizeOf(int copy)
    {
        int way = copy * pieces.Ways, last = way + pieces.Ways - 1;
        return (pieces.Width[way], pieces.Height[way], pieces.Width[last], pieces.Height[last]);
    }

    private bool Fill(int depth, long waste)
    {
        if (placed == pieces.Count)
            return true;
        if (++nodes > NodesOfATry)
            return false;

        int at = Lowest(), y = stepY[at];
        int gap = (at + 1 < steps ? stepX[at + 1] : width) - stepX[at];
        int leftWall = at > 0 ? stepY[at - 1] : height, rightWall = at + 1 < steps ? stepY[at + 1] : height;
        int wall = Math.Min(leftWall, rightWall);
        if (y >= height || waste + Sure(gap, height - y, wall - y) > allowed)
            return false;

        Span<int> choices = stackalloc int[kindWay.Length];
        int count = Choices(choices, gap, (leftWall - y, rightWall - y, height - y));
        Keep(depth);
        for (int i = 0; i < count; i++)
        {
            Lay(choices[i], at, gap, leftWall);
            if (Fill(depth + 1, waste))
                return true;
            Restore(depth);
            left[kindKin[choices[i]]]++;
            placed--;
            if (nodes > NodesOfATry)
                return false;
        }

        long given = waste + ((long)gap * (wall - y));
        if (given > allowed)
            return false;
        Raise(at, wall);
        return Fill(depth + 1, given);
    }

    // Kinds that fit, the likelier first: large, level with the walls, with a good deal of chance.
    private int Choices(Span<int> choices, int gap, (int Left, int Right, int Room) high)
    {
        Span<double> keys = stackalloc double[choices.Length];
        int count = 0;
        for (int kind = 0; kind < kindWay.Length; kind++)
        {
            if (left[kindKin[kind]] == 0 || kindWidth[kind] > gap || kindHeight[kind] > high.Room)
                continue;

            double key = (Math.Sqrt((double)kindWidth[kind] * kindHeight[kind]) / width) + (0.35 * chance.Share());
            key += kindHeight[kind] == high.Left ? 0.15 : 0;
            key += kindWidth[kind] == gap ? 0.15 + (kindHeight[kind] == high.Right ? 0.15 : 0) : 0;
            keys[count] = -key;
            choices[count++] = kind;
        }

        keys[..count].Sort(choices[..count]);
        return count;
    }

    // Waste on the floor of a gap that no choice of pieces avoids.
    private long Sure(int gap, int room, int wall)
    {
        Span<ulong> sums = stackalloc ulong[words];
        sums.Clear();
        sums[0] = 1;
        int units = gap / unit, end = (units >> 6) + 1, lowest = wall;
        for (int kind = 0; kind < kindWay.Length; kind++)
        {
            if (left[kindKin[kind]] == 0)
                continue;

            lowest = Math.Min(lowest, kindHeight[kind]);
            int one = kindWidth[kind] / unit;
            if (kindHeight[kind] <= room)
                for (int copy = 1; copy <= left[kindKin[kind]] && one * copy <= units; copy++)
                    Shift(sums[..end], one);
        }

        while (units > 0 && (sums[units >> 6] >> (units & 63) & 1) == 0)
            units--;
        return (long)(gap - (units * unit)) * lowest;
    }

    private static void Shift(Span<ulong> sums, int by)
    {
        (int word, int bit) = (by >> 6, by & 63);
        for (int i = sums.Length - 1; i >= word; i--)
            sums[i] |= (sums[i - word] << bit) | (bit > 0 && i > word ? sums[i - word - 1] >> (64 - bit) : 0);
    }

    private void Lay(int kind, int at, int gap, int leftWall)
    {
        int w = kindWidth[kind], top = stepY[at] + kindHeight[kind];
        left[kindKin[kind]]--;
        (ways[placed], xs[placed], ys[placed]) = (kind, stepX[at], stepY[at]);
        placed++;
        if (w == gap)
        {
            Raise(at, top);
            return;
        }

        if (at == 0 || top != leftWall)
        {
            Array.Copy(stepX, at, stepX, at + 1, steps - at);
            Array.Copy(stepY, at, stepY, at + 1, steps - at);
            stepY[at++] = top;
            steps++;
        }

        stepX[at] += w;
    }

    private void Raise(int at, int top)
    {
        stepY[at] = top;
        if (at + 1 < steps && stepY[at + 1] == top)
            Remove(at + 1);
        if (at > 0 && stepY[at - 1] == top)
            Remove(at);
    }

    private void Remove(int at)
    {
        Array.Copy(stepX, at + 1, stepX, at, steps - at - 1);
        Array.Copy(stepY, at + 1, stepY, at, steps - at - 1);
        steps--;
    }

    private int Lowest()
    {
        int at = 0;
        for (int i = 1; i < steps; i++)
            if (stepY[i] < stepY[at])
                at = i;
        return at;
    }

    private void Keep(int depth)
    {
        int from = depth * 2 * stepX.Length;
        kept[from] = steps;
        stepX.AsSpan(0, steps).CopyTo(kept.AsSpan(from + 1));
        stepY.AsSpan(0, steps).CopyTo(kept.AsSpan(from + 1 + steps));
    }

    private void Restore(int depth)
    {
        int from = depth * 2 * stepX.Length;
        steps = kept[from];
        kept.AsSpan(from + 1, steps).CopyTo(stepX);
        kept.AsSpan(from + 1 + steps, steps).CopyTo(stepY);
    }

    // The order of laying fills the strip again, or nearly so: a walk may start from it.
    private StripRecord Record()
    {
        int[] used = new int[kin.Length];
        int[] laid = [.. ways.Select(kind => (kin[kindKin[kind]][used[kindKin[kind]]++] * pieces.Ways) + (kindWay[kind] % pieces.Ways))];
        int top = 0;
        for (int i = 0; i < laid.Length; i++)
            top = Math.Max(top, ys[i] + pieces.Height[laid[i]]);
        return new(top, [.. laid.Select(w => w / pieces.Ways)], [.. laid.Select(w => w % pieces.Ways)], laid, [.. xs], [.. ys]);
    }
}
