using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Laydown.Plan.Week;

/// <summary>An order in work: what a move would change is told without carrying it out.</summary>
/// <remarks>
/// Within a block that is moved as a whole every job is shifted by the same time, so that a move splits the order in at most four parts, each with one
/// shift. Lateness of a part is a convex function of its shift: its tangent at no shift, from sums over the weights of late jobs, is a bound below,
/// and most moves are refused by it. The others are reckoned in full, several places at a time; a test holds both
/// equal to the plain way.
/// </remarks>
internal sealed class SequenceState
{
    private readonly SequenceProblem problem;
    private readonly int count;
    private readonly int[] setUps;
    private readonly int[] length;
    private readonly int[] due;
    private readonly int[] jobWeight;
    private readonly int[] order;
    private readonly int[] ends;
    private readonly int[] starts;
    private readonly int[] late;
    private readonly int[] weight;
    private readonly int[] lateWeight;
    private readonly int[] touchedWeight;
    private readonly long[] cost;
    private readonly int[] scratch;
    private readonly int[] tails;
    private readonly long allWeight;

    internal SequenceState(SequenceProblem problem, IReadOnlyList<int> first)
    {
        this.problem = problem;
        count = problem.Count;
        setUps = problem.SetUps;
        length = [.. problem.Jobs.Select(j => j.Length)];
        due = [.. problem.Jobs.Select(j => j.Due)];
        jobWeight = [.. problem.Jobs.Select(j => j.Weight)];
        allWeight = jobWeight.Sum(w => (long)w);
        int room = count + Vector<int>.Count + 1;
        (order, ends, starts, late, weight) = (new int[room], new int[room], new int[room], new int[room], new int[room]);
        (lateWeight, touchedWeight, cost, scratch) = (new int[room], new int[room], new long[room], new int[room]);
        tails = [.. Enumerable.Repeat(-1, Vector<int>.Count), .. Enumerable.Repeat(0, Vector<int>.Count)];
        Take(first);
    }

    /// <summary>Cost of the order as it stands.</summary>
    internal long Cost => cost[count];

    /// <summary>Mean weight of a job, 1 at least.</summary>
    internal int MeanWeight => Math.Max(1, (int)(allWeight / Math.Max(1, count)));

    /// <summary>Whether more than half of all weight is late.</summary>
    internal bool IsMostlyLate => 2L * lateWeight[count] > allWeight;

    /// <summary>The order as it stands.</summary>
    internal ReadOnlySpan<int> Order => order.AsSpan(0, count);

    /// <summary>Takes another order.</summary>
    internal void Take(IReadOnlyList<int> other)
    {
        for (int at = 0; at < count; at++)
            order[at] = other[at];
        Figure(0);
    }

    /// <summary>What a move would add to the cost, or <see cref="long.MaxValue"/> where that is surely more than <paramref name="most"/>.</summary>
    /// <param name="move">The move.</param>
    /// <param name="most">What is of interest.</param>
    /// <param name="endWeight">What a unit of time at the end of the last job weighs besides.</param>
    internal long Change(in SequenceMove move, long most, int endWeight = 0)
    {
        (int first, int second, int third, int end) = (move.First, move.Second, move.Third, move.End);
        int time = first == 0 ? 0 : ends[first - 1], before = first == 0 ? count : order[first - 1];

        // The shift of each part in its new place: B, the middle, A, and all that comes after.
        int shiftB = time + setUps[(before * count) + order[third]] - starts[third], shiftMiddle = 0;
        (time, before) = (ends[end - 1] + shiftB, order[end - 1]);
        if (third > second)
        {
            shiftMiddle = time + setUps[(before * count) + order[second]] - starts[second];
            (time, before) = (ends[third - 1] + shiftMiddle, order[third - 1]);
        }

        int shiftA = time + setUps[(before * count) + order[first]] - starts[first];
        int shiftRest = end == count ? 0 : ends[second - 1] + shiftA + setUps[(order[second - 1] * count) + order[end]] - starts[end];

        long besides = (long)endWeight * (end == count ? ends[second - 1] + shiftA - ends[count - 1] : shiftRest);
        long bound = besides + Tangent(first, second, shiftA) + Tangent(second, third, shiftMiddle) + Tangent(third, end, shiftB) + Tangent(end, count, shiftRest);
        if (bound > most)
            return long.MaxValue;

        int last = shiftRest == 0 ? end : count;
        long after = problem.IsSmall
            ? Vector.Sum(Wide(first, second, shiftA) + Wide(second, third, shiftMiddle) + Wide(third, end, shiftB) + Wide(end, last, shiftRest))
            : Plain(first, second, shiftA) + Plain(second, third, shiftMiddle) + Plain(third, end, shiftB) + Plain(end, last, shiftRest);
        return besides + after - (cost[last] - cost[first]);
    }

    /// <summary>Carries a move out.</summary>
    internal void Apply(in SequenceMove move)
    {
        (int first, int second, int third, int end) = (move.First, move.Second, move.Third, move.End);
        order.AsSpan(third, end - third).CopyTo(scratch);
        order.AsSpan(second, third - second).CopyTo(scratch.AsSpan(end - third));
        order.AsSpan(first, second - first).CopyTo(scratch.AsSpan(end - second));
        scratch.AsSpan(0, end - first).CopyTo(order.AsSpan(first));
        Figure(first);
    }

    // All that is kept about places from a place on.
    private void Figure(int from)
    {
        int time = from == 0 ? 0 : ends[from - 1], before = from == 0 ? count : order[from - 1];
        (int nowLate, int touched, long sum) = (lateWeight[from], touchedWeight[from], cost[from]);
        for (int at = from; at < count; at++)
        {
            int job = order[at], w = jobWeight[job];
            starts[at] = time + setUps[(before * count) + job];
            time = starts[at] + length[job];
            int over = time - due[job];
            (ends[at], late[at], weight[at], before) = (time, over, w, job);
            if (over >= 0)
                touched += w;
            if (over > 0)
            {
                nowLate += w;
                sum += (long)w * over;
            }

            (lateWeight[at + 1], touchedWeight[at + 1], cost[at + 1]) = (nowLate, touched, sum);
        }
    }

    // To a later time the jobs just at their due time count as well, to an earlier one only those beyond it.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private long Tangent(int from, int to, int shift) =>
        (long)shift * (shift > 0 ? touchedWeight[to] - touchedWeight[from] : lateWeight[to] - lateWeight[from]);

    private long Plain(int from, int to, int shift)
    {
        long sum = 0;
        for (int at = from; at < to; at++)
            sum += (long)weight[at] * Math.Max(0, late[at] + shift);
        return sum;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector<int> Wide(int from, int to, int shift)
    {
        Vector<int> sum = Vector<int>.Zero, shifts = new(shift);
        ref int lates = ref MemoryMarshal.GetArrayDataReference(late);
        ref int weights = ref MemoryMarshal.GetArrayDataReference(weight);
        int at = from;
        for (; at + Vector<int>.Count <= to; at += Vector<int>.Count)
            sum += Vector.Max(Vector.LoadUnsafe(ref lates, (nuint)at) + shifts, Vector<int>.Zero) * Vector.LoadUnsafe(ref weights, (nuint)at);
        if (at >= to)
            return sum;

        // The last places: those beyond the part weigh nothing.
        Vector<int> tail = Vector.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(tails), (nuint)(Vector<int>.Count - (to - at)));
        return sum + (Vector.Max(Vector.LoadUnsafe(ref lates, (nuint)at) + shifts, Vector<int>.Zero) * (Vector.LoadUnsafe(ref weights, (nuint)at) & tail));
    }
}
