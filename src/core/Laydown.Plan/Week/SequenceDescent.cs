namespace Laydown.Plan.Week;

/// <summary>Improves an order until no move at the places looked at helps.</summary>
/// <remarks>
/// Jobs wait in a queue. For the first of it all moves of blocks that begin, end or land beside it and all swaps with it are weighed; the best is
/// carried out, and the jobs at the borders of the change join the queue. Places far from any change are not looked at again.
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

        for (int other = 0; other < count; other++)
            if (other != at)
                Weigh(new(Math.Min(at, other), Math.Min(at, other) + 1, Math.Max(at, other), Math.Max(at, other) + 1));
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
        int far = FarOf(block);
        for (int to = Math.Max(0, from - far); to < from; to++)
            Weigh(new(to, from, from, end));
        for (int to = end + 1; to <= Math.Min(count, end + far); to++)
            Weigh(new(from, end, end, to));
    }

    // Any block of that length, put before a place.
    private void WeighLandings(int at, int block)
    {
        int far = FarOf(block);
        for (int from = Math.Max(0, at - block - far); from + block < at; from++)
            Weigh(new(from, from + block, from + block, at));
        for (int from = at + 1; from + block <= count && from <= at + far; from++)
            Weigh(new(at, from, from, from + block));
    }

    private int FarOf(int block) => near ? FarOfBlock[block] : count;

    private void Weigh(in SequenceMove move)
    {
        Weighed++;
        long change = state.Change(move, gain);
        if (change > gain)
            return;
        (gain, found) = (change - 1, move);
    }
}
