using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Laydown.Plan.Week;

/// <summary>Improves an order until no move at the places looked at helps.</summary>
/// <remarks>
/// Jobs wait in a queue. For the first of it all moves of blocks that begin, end or land beside it and all swaps with it are weighed; the best is
/// carried out, and the jobs at the borders of the change join the queue. Places far from any change are not looked at again. Moves that differ by one
/// place are a sweep: their bounds are told side by side, and only those that may be better than the best so far are weighed.
/// Where most weight is late, long blocks are not moved far: on published instances such moves were nearly never of use and took a quarter of the time.
/// </remarks>
internal sealed class SequenceDescent(SequenceState state)
{
    private const int MostBlock = 13;

    // How far a block of each length is moved where most weight is late.
    private static readonly int[] FarOfBlock = [0, 1 << 20, 25, 25, 14, 14, 14, 14, 10, 10, 10, 10, 10, 10];

    private readonly int count = state.Order.Length;
    private readonly Queue<int> queue = new();
    private readonly bool[] waits = new bool[state.Order.Length];
    private SequenceMove found;
    private long gain;
    private bool near;

    /// <summary>Moves weighed so far.</summary>
    internal long Weighed { get; private set; }

    /// <summary>Has all jobs looked at.</summary>
    internal void LookAtAll()
    {
        for (int at = 0; at < count; at++)
            LookAt(at);
    }

    /// <summary>Has the jobs at the borders of a move that was carried out looked at.</summary>
    internal void LookAround(in SequenceMove move)
    {
        int afterB = move.First + move.End - move.Third, afterMiddle = afterB + move.Third - move.Second;
        foreach (int border in (ReadOnlySpan<int>)[move.First, afterB, afterMiddle, move.End])
        {
            LookAt(border - 1);
            LookAt(border);
        }
    }

    /// <summary>Goes down until the queue is empty.</summary>
    internal void Run()
    {
        while (queue.TryDequeue(out int job))
        {
            waits[job] = false;
            while (Improve(job))
            {
            }
        }
    }

    private void LookAt(int at)
    {
        if (at < 0 || at >= count || waits[state.Order[at]])
            return;
        waits[state.Order[at]] = true;
        queue.Enqueue(state.Order[at]);
    }

    private bool Improve(int job)
    {
        int at = state.Order.IndexOf(job);
        (gain, near) = (-1, state.IsMostlyLate);
        for (int block = 1; block <= MostBlock; block++)
        {
            WeighBlock(at, block);
            if (block > 1)
                WeighBlock(at - block + 1, block);
            WeighLandings(at, block);
        }

        // Swaps; with a neighbour it is a block of one, shifted by one.
        Sweep(new(0, 1, at, at + 1), SequenceRising.First | SequenceRising.Second, at - 1);
        Sweep(new(at, at + 1, at + 2, at + 3), SequenceRising.Third | SequenceRising.End, count - at - 2);
        if (gain == -1)
            return false;

        state.Apply(found);
        LookAround(found);
        return true;
    }

    // The block from a place on, put anywhere.
    private void WeighBlock(int from, int block)
    {
        int end = from + block;
        if (from < 0 || end > count)
            return;
        int far = FarOf(block), least = Math.Max(0, from - far);
        Sweep(new(least, from, from, end), SequenceRising.First, from - least);
        Sweep(new(from, end, end, end + 1), SequenceRising.End, Math.Min(count, end + far) - end);
    }

    // Any block of that length, put before a place.
    private void WeighLandings(int at, int block)
    {
        int far = FarOf(block), least = Math.Max(0, at - block - far);
        Sweep(new(least, least + block, least + block, at), SequenceRising.First | SequenceRising.Second | SequenceRising.Third, at - block - least);
        Sweep(new(at, at + 1, at + 1, at + 1 + block), SequenceRising.Second | SequenceRising.Third | SequenceRising.End, Math.Min(count - block, at + far) - at);
    }

    private int FarOf(int block) => near ? FarOfBlock[block] : count;

    // Inlined, so that what rises is known where it is called from.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Sweep(SequenceMove move, SequenceRising rising, int moves)
    {
        Weighed += Math.Max(0, moves);
        for (int done = 0; done < moves; done += SequenceState.Lanes)
        {
            SequenceMove here = move.Further(rising, done);
            uint open = Open(here, rising, moves - done);
            for (; open != 0; open &= open - 1)
                Weigh(here.Further(rising, BitOperations.TrailingZeroCount(open)));
        }
    }

    // Which of the next moves may gain as much as the best so far: one bit each.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private uint Open(in SequenceMove move, SequenceRising rising, int moves)
    {
        uint within = moves < SequenceState.Lanes ? (1u << moves) - 1 : uint.MaxValue >> (32 - SequenceState.Lanes);
        return state.HasBounds ? Vector256.LessThanOrEqual(state.Bounds(move, rising), Vector256.Create((int)gain)).ExtractMostSignificantBits() & within : within;
    }

    private void Weigh(in SequenceMove move)
    {
        long change = state.Change(move, gain);
        if (change <= gain)
            (gain, found) = (change - 1, move);
    }
}
