namespace Laydown.Plan.Week;

/// <summary>A thread's share of the search: lines of kicks and descents, each begun by a cooling.</summary>
internal sealed class SequenceWorker
{
    /// <summary>Steps of a cooling, for each job.</summary>
    private const int CoolingSteps = 100;

    /// <summary>Kicks of a line without a gain, after which another is begun.</summary>
    private const int MostIdle = 800;

    /// <summary>Warmth of the first cooling, shares of a usual small loss.</summary>
    private const double FirstWarm = 0.3;

    private const double FirstCold = 0.003;

    /// <summary>Later coolings begin and end that much above and below the warmth at which the last ones had their best orders.</summary>
    private const double WarmOver = 12;

    private const double ReheatOver = 5;
    private const double ColdUnder = 3;
    private const int KickBlock = 14;
    private const int KickGap = 20;

    private readonly SequenceState state;
    private readonly SequenceDescent descent;
    private readonly SequenceMoves moves;
    private readonly WeekChance chance;
    private readonly int count;
    private readonly double usualLoss;
    private SequenceCooling? cooling;
    private bool begun;
    private double goodWarmth;
    private int[] line;
    private long lineCost;
    private int lines;
    private int idle;
    private long coolingMoves;

    internal SequenceWorker(SequenceProblem problem, SequenceAnswer first, long seed)
    {
        state = new(problem, first.Order);
        descent = new(state);
        chance = new(seed);
        moves = new(Math.Max(2, problem.Count));
        count = problem.Count;
        line = [.. first.Order];
        lineCost = first.Cost;
        Best = first;
        usualLoss = UsualLoss();
        cooling = FromAfresh();
    }

    /// <summary>The best order it has had or was told of.</summary>
    internal SequenceAnswer Best { get; private set; }

    /// <summary>Takes note of another worker's best.</summary>
    internal void Follow(SequenceAnswer other)
    {
        if (other.Cost < Best.Cost)
            Best = other;
    }

    /// <summary>Works for so many iterations (a step of a cooling, or a kick with its descent) or moves, whichever ends first.</summary>
    /// <returns>Iterations done.</returns>
    internal long Run(long iterations, long moves, CancellationToken stop)
    {
        long done = 0, end = descent.Weighed + coolingMoves + moves;
        for (; done < iterations && descent.Weighed + coolingMoves < end && Best.Cost > 0 && !stop.IsCancellationRequested; done++)
            Iterate();
        return done;
    }

    private void Iterate()
    {
        if (!begun)
        {
            // The first answer, brought down, is the first gain.
            begun = true;
            descent.LookAtAll();
            descent.Run();
            Note();
            return;
        }

        if (cooling is null)
        {
            Kick();
            return;
        }

        cooling.Step();
        coolingMoves += SequenceCooling.StepMoves;
        if (cooling.BestCost < Best.Cost)
            Best = new([.. cooling.Best], cooling.BestCost);
        if (!cooling.IsDone)
            return;

        // The best order of the cooling, brought down, begins a line.
        goodWarmth = goodWarmth == 0 ? cooling.WarmthOfBest : (0.7 * goodWarmth) + (0.3 * cooling.WarmthOfBest);
        state.Take(cooling.Best);
        cooling = null;
        descent.LookAtAll();
        descent.Run();
        (lineCost, idle) = (state.Cost, 0);
        line = state.Order.ToArray();
        Note();
    }

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
        if (state.Cost <= lineCost)
        {
            lineCost = state.Cost;
            state.Order.CopyTo(line);
            Note();
        }

        if (idle > MostIdle)
            cooling = ++lines % 2 == 0 ? FromAfresh() : FromBest();
    }

    private void Note()
    {
        if (state.Cost < Best.Cost)
            Best = new(state.Order.ToArray(), state.Cost);
    }

    // The order at hand is of no matter: it is too warm for that.
    private SequenceCooling FromAfresh() => goodWarmth == 0
        ? new(state, moves, chance, usualLoss * FirstWarm, usualLoss * FirstCold, CoolingSteps * count)
        : new(state, moves, chance, Math.Min(usualLoss * FirstWarm, goodWarmth * WarmOver), goodWarmth / ColdUnder, CoolingSteps * count);

    private SequenceCooling FromBest()
    {
        state.Take(Best.Order);
        return new(state, moves, chance, goodWarmth * ReheatOver, goodWarmth / ColdUnder, CoolingSteps * count);
    }

    // The loss that one in ten of the moves that lose stays under.
    private double UsualLoss()
    {
        const int tries = 3000;
        List<long> losses = [];
        for (int i = 0; i < tries; i++)
            if (state.Change(moves.Pick(chance), long.MaxValue) is > 0 and var loss)
                losses.Add(loss);
        losses.Sort();
        return losses.Count == 0 ? 1 : losses[losses.Count / 10];
    }
}
