namespace Laydown.Plan.Week;

/// <summary>A thread's share of the search: orders drawn by chance and brought down, then crossed with each other, each child brought down in turn.</summary>
internal sealed class SequenceWorker
{
    /// <summary>Orders kept at a time.</summary>
    private const int Room = 12;

    /// <summary>Kicks without a gain after which a line ends: of an order drawn by chance, and of a child.</summary>
    private const int IdleOfDrawn = 100;

    private const int IdleOfChild = 40;

    /// <summary>Children in a row that were not kept, after which all begins afresh.</summary>
    private const int MostVain = 150;

    private const int KickBlock = 14;
    private const int KickGap = 20;

    private readonly SequenceState state;
    private readonly SequenceDescent descent;
    private readonly SequenceOrders orders;
    private readonly WeekChance chance;
    private readonly int count;
    private int[]? begin;
    private readonly int[] line;
    private long lineCost;
    private bool inLine;
    private int idle;
    private int vain;

    internal SequenceWorker(SequenceProblem problem, SequenceAnswer first, long seed)
    {
        state = new(problem, first.Order);
        descent = new(state);
        chance = new(seed);
        count = problem.Count;
        orders = new(count, Room);
        begin = [.. first.Order];
        line = new int[count];
        Best = first;
    }

    /// <summary>The best order it has had.</summary>
    internal SequenceAnswer Best { get; private set; }

    /// <summary>Works for so many iterations (an order begun, or a kick; each with its descent) or moves, whichever ends first.</summary>
    /// <returns>Iterations done.</returns>
    internal long Run(long iterations, long moves, CancellationToken stop)
    {
        long done = 0, end = descent.Weighed + moves;
        for (; done < iterations && descent.Weighed < end && Best.Cost > 0 && !stop.IsCancellationRequested; done++)
            Iterate();
        return done;
    }

    /// <summary>Takes another worker's best among its own orders, once it has as many as it keeps.</summary>
    internal void Follow(SequenceAnswer other)
    {
        if (orders.IsFull)
            orders.Keep([.. other.Order], other.Cost);
    }

    private void Iterate()
    {
        if (inLine)
            Kick();
        else
            Begin();
        if (idle > (orders.IsFull ? IdleOfChild : IdleOfDrawn))
            End();
    }

    private void Begin()
    {
        state.Take(begin ?? (orders.IsFull ? orders.Cross(chance) : Drawn()));
        begin = null;
        descent.LookAtAll();
        descent.Run();
        (inLine, idle, lineCost) = (true, 0, state.Cost);
        state.Order.CopyTo(line);
        Note();
    }

    // Two blocks by chance change places; what comes of it goes on where it is no worse.
    private void Kick()
    {
        state.Take(line);
        int a = 1 + chance.Below(Math.Min(KickBlock, count / 2)), b = 1 + chance.Below(Math.Min(KickBlock, count / 2)), gap = chance.Below(Math.Min(KickGap, count - a - b) + 1);
        int from = chance.Below(count - a - b - gap + 1);
        SequenceMove kick = new(from, from + a, from + a + gap, from + a + gap + b);
        state.Apply(kick);
        descent.LookAround(kick);
        descent.Run();
        idle = state.Cost < lineCost ? 0 : idle + 1;
        if (state.Cost > lineCost)
            return;

        lineCost = state.Cost;
        state.Order.CopyTo(line);
        Note();
    }

    private void End()
    {
        vain = orders.Keep(line, lineCost) ? 0 : vain + 1;
        inLine = false;
        idle = 0;
        if (vain <= MostVain)
            return;
        orders.Clear();
        vain = 0;
    }

    private int[] Drawn()
    {
        int[] order = [.. Enumerable.Range(0, count)];
        for (int at = count - 1; at > 0; at--)
        {
            int other = chance.Below(at + 1);
            (order[at], order[other]) = (order[other], order[at]);
        }

        return order;
    }

    private void Note()
    {
        if (state.Cost < Best.Cost)
            Best = new(state.Order.ToArray(), state.Cost);
    }
}
