using System.Numerics;

namespace Laydown.Layout.Strips;

/// <summary>Fills a strip up to a height: the lowest gap first, by the piece that fits it best, the earlier of the order where several do.</summary>
/// <remarks>
/// The outline of what lies is a row of level steps. The lowest takes the piece whose width is the gap's and whose top is level with a
/// neighbour; then the gap's width alone; then a level top alone; else the first of the order; a gap that takes nothing is given up and
/// raised to its lower neighbour ([Burke2004], scored as in [Leung2011]). No piece passes the height, whose line counts as the neighbour at the walls.
/// Waste given up is known as it arises, so a filling that cannot be good enough ends early.
/// </remarks>
internal sealed class StripFill
{
    private readonly StripPieces pieces;
    private readonly StripProblem problem;
    private readonly int width, words;
    private readonly ulong[] free, fitting, best;
    private readonly int[] stepX, stepY;
    private int steps;
    private int height;

    internal StripFill(StripPieces pieces, StripProblem problem, int words)
    {
        this.pieces = pieces;
        this.problem = problem;
        width = problem.Width;
        this.words = words;
        free = new ulong[words];
        fitting = new ulong[words];
        best = new ulong[words];
        stepX = new int[pieces.Count + 4];
        stepY = new int[pieces.Count + 4];
        Ways = new int[pieces.Count];
        Xs = new int[pieces.Count];
        Ys = new int[pieces.Count];
    }

    /// <summary>How many copies the last filling put down.</summary>
    internal int Placed { get; private set; }

    /// <summary>Way of each copy put down: copy × ways + way.</summary>
    internal int[] Ways { get; }

    /// <summary>Left side of each copy put down.</summary>
    internal int[] Xs { get; }

    /// <summary>Lower side of each copy put down.</summary>
    internal int[] Ys { get; }

    /// <summary>Top of the highest copy put down.</summary>
    internal int Top
    {
        get
        {
            int top = 0;
            for (int i = 0; i < Placed; i++)
                top = Math.Max(top, Ys[i] + pieces.Height[Ways[i]]);
            return top;
        }
    }

    /// <summary>Area left bare below a height when pieces follow an order; −1 once it passes <paramref name="most"/>.</summary>
    internal long Run(StripRows rows, int upTo, long most)
    {
        Start();
        height = upTo;
        return Fill(rows, most);
    }

    /// <summary>Goes on with what found no place, up to another height.</summary>
    internal void Finish(StripRows rows, int upTo)
    {
        height = upTo;
        Fill(rows, long.MaxValue);
    }

    private long Fill(StripRows rows, long most)
    {
        long waste = 0;
        int at = Lowest();
        while (true)
        {
            int y = stepY[at];
            if (y >= height)
                return waste;

            int gap = (at + 1 < steps ? stepX[at + 1] : width) - stepX[at];
            int left = at > 0 ? Math.Min(height, stepY[at - 1]) : height, right = at + 1 < steps ? Math.Min(height, stepY[at + 1]) : height;
            int bit = Pick(rows, gap, left - y, right - y, height - y, out bool atRight);
            if (bit >= 0)
            {
                int way = rows.WayAt(bit);
                int w = pieces.Width[way], top = y + pieces.Height[way];
                Ways[Placed] = way;
                Xs[Placed] = atRight ? stepX[at] + gap - w : stepX[at];
                Ys[Placed++] = y;
                Take(bit);
                if (Placed == pieces.Count)
                    return 0;
                if (w < gap)
                {
                    at = Narrow(at, w, top, left, right, atRight);
                    continue;
                }

                Raise(at, top);
            }
            else
            {
                int top = Math.Min(left, right);
                waste += (long)gap * (top - y);
                if (waste > most)
                    return -1;
                Raise(at, top);
            }

            at = Lowest();
        }
    }

    private void Start()
    {
        int bits = pieces.Count * pieces.Ways;
        Array.Fill(free, ulong.MaxValue);
        if ((bits & 63) != 0)
            free[words - 1] = (1UL << bits) - 1;
        (steps, stepX[0], stepY[0]) = (1, 0, 0);
        Placed = 0;
        if (problem.BarWidth == 0)
            return;

        // The bar is a step higher than any filling.
        (steps, stepX[1], stepY[1], stepX[2], stepY[2]) = (3, problem.BarX, int.MaxValue, problem.BarX + problem.BarWidth, 0);
    }

    private void Take(int bit)
    {
        ulong mask = pieces.Ways == 1 ? 1UL << bit : 3UL << (bit & ~1);
        free[bit >> 6] &= ~mask;
    }

    // The bit of the best piece for a gap, or −1.
    private int Pick(StripRows rows, int gap, int left, int right, int room, out bool atRight)
    {
        atRight = left < right;
        int widths = StripPieces.UpTo(pieces.Widths, gap) - 1, heights = StripPieces.UpTo(pieces.Heights, room) - 1;
        if (widths < 0 || heights < 0 || !And(free, rows.Fits(widths), rows.Low(heights), fitting))
            return -1;

        int high = Level(Math.Max(left, right), heights), lowLevel = left == right ? -1 : Level(Math.Min(left, right), heights);
        int bit;
        if (pieces.Widths[widths] == gap && And(fitting, rows.Exact(widths), best))
        {
            if (high >= 0 && (bit = First(best, rows.Level(high))) >= 0)
                return bit;
            if (lowLevel >= 0 && (bit = First(best, rows.Level(lowLevel))) >= 0)
                return bit;
            return First(best);
        }

        if (high >= 0 && (bit = First(fitting, rows.Level(high))) >= 0)
            return bit;
        if (lowLevel >= 0 && (bit = First(fitting, rows.Level(lowLevel))) >= 0)
        {
            atRight = !atRight;
            return bit;
        }

        return First(fitting);
    }

    // The rank of a height, or −1 where no piece has it or it has no room.
    private int Level(int value, int most)
    {
        int rank = StripPieces.UpTo(pieces.Heights, value) - 1;
        return rank >= 0 && rank <= most && pieces.Heights[rank] == value ? rank : -1;
    }

    private static bool And(ReadOnlySpan<ulong> a, ReadOnlySpan<ulong> b, ReadOnlySpan<ulong> c, Span<ulong> to)
    {
        ulong any = 0;
        for (int i = 0; i < to.Length; i++)
            any |= to[i] = a[i] & b[i] & c[i];
        return any != 0;
    }

    private static bool And(ReadOnlySpan<ulong> a, ReadOnlySpan<ulong> b, Span<ulong> to)
    {
        ulong any = 0;
        for (int i = 0; i < to.Length; i++)
            any |= to[i] = a[i] & b[i];
        return any != 0;
    }

    private static int First(ReadOnlySpan<ulong> a, ReadOnlySpan<ulong> b)
    {
        for (int i = 0; i < a.Length; i++)
            if ((a[i] & b[i]) is ulong both and not 0)
                return (i << 6) + BitOperations.TrailingZeroCount(both);
        return -1;
    }

    private static int First(ReadOnlySpan<ulong> a)
    {
        for (int i = 0; i < a.Length; i++)
            if (a[i] != 0)
                return (i << 6) + BitOperations.TrailingZeroCount(a[i]);
        return -1;
    }

    // A piece covers a part of the lowest step; the rest stays the lowest. Gives the rest's place.
    private int Narrow(int at, int w, int top, int left, int right, bool atRight)
    {
        if (!atRight)
        {
            if (at > 0 && top == left)
            {
                stepX[at] += w;
                return at;
            }

            Insert(at, stepX[at], top);
            stepX[at + 1] += w;
            return at + 1;
        }

        if (at + 1 < steps && top == right)
            stepX[at + 1] -= w;
        else
            Insert(at + 1, (at + 1 < steps ? stepX[at + 1] : width) - w, top);
        return at;
    }

    private void Insert(int at, int x, int y)
    {
        Array.Copy(stepX, at, stepX, at + 1, steps - at);
        Array.Copy(stepY, at, stepY, at + 1, steps - at);
        (stepX[at], stepY[at]) = (x, y);
        steps++;
    }

    private void Remove(int at)
    {
        Array.Copy(stepX, at + 1, stepX, at, steps - at - 1);
        Array.Copy(stepY, at + 1, stepY, at, steps - at - 1);
        steps--;
    }

    private void Raise(int at, int top)
    {
        stepY[at] = top;
        if (at + 1 < steps && stepY[at + 1] == top)
            Remove(at + 1);
        if (at > 0 && stepY[at - 1] == top)
            Remove(at);
    }

    private int Lowest()
    {
        int at = 0, y = stepY[0];
        for (int i = 1; i < steps; i++)
            if (stepY[i] < y)
                (at, y) = (i, stepY[i]);
        return at;
    }
}
