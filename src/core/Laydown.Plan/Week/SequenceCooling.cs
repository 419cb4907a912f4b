namespace Laydown.Plan.Week;

/// <summary>A walk from warm to cold: moves by chance are taken where they are no worse than patience times warmth allows, and warmth falls.</summary>
/// <remarks>
/// While it is warm the end of the last job weighs as well, so that set-ups grow short also where no job is late; at the end only lateness counts.
/// </remarks>
internal sealed class SequenceCooling(SequenceState state, SequenceMoves moves, WeekChance chance, double warm, double cold, int steps)
{
    /// <summary>Moves of a step: warmth falls from step to step.</summary>
    internal const int StepMoves = 1024;

    private const int EndWeights = 2;

    private readonly double start = warm;
    private readonly double factor = 1 / (1 + (WeekChance.MinusLog(cold / warm) / steps));
    private int done;

    /// <summary>How warm it is, in units of cost.</summary>
    internal double Warmth { get; private set; } = warm;

    /// <summary>How warm it was at the best order.</summary>
    internal double WarmthOfBest { get; private set; } = warm;

    /// <summary>Cost of the best order.</summary>
    internal long BestCost { get; private set; } = state.Cost;

    /// <summary>The best order.</summary>
    internal int[] Best { get; } = state.Order.ToArray();

    /// <summary>Whether it is at its end.</summary>
    internal bool IsDone => done >= steps || BestCost == 0;

    /// <summary>A step.</summary>
    internal void Step()
    {
        int endWeight = (int)(EndWeights * state.MeanWeight * Warmth / start);
        for (int i = 0; i < StepMoves; i++)
        {
            SequenceMove move = moves.Pick(chance);
            long most = (long)(Warmth * chance.Patience());
            if (state.Change(move, most, endWeight) > most)
                continue;

            state.Apply(move);
            if (state.Cost >= BestCost)
                continue;
            (BestCost, WarmthOfBest) = (state.Cost, Warmth);
            state.Order.CopyTo(Best);
        }

        Warmth *= factor;
        done++;
    }
}
