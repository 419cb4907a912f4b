using Laydown.Layout.Packing;

namespace Laydown.Layout.Strips;

/// <summary>One worker's walk over orders: aims at a height under the best, anneals until everything lies below it or the walk is over, then aims anew.</summary>
/// <remarks>
/// What is annealed is the area that finds no place below the aim. The threshold is drawn before a filling, so that most fillings end
/// as soon as their waste passes it. Moves: two places of the order change, or a place prefers the other way.
/// </remarks>
internal sealed class StripWalk
{
    /// <summary>Temperatures walks start at in turn, in mean areas of a copy: no one of them is best for all strips.</summary>
    private static readonly double[] Warm = [0.5, 0.25, 0.12];

    /// <summary>Placings of one walk, about.</summary>
    private const long WalkWork = 2_000_000;

    private const double TurnShare = 0.25;

    /// <summary>Fillings between two visits to the tree of a small strip, and tries of a visit: about as much work as those fillings.</summary>
    private const int TreeAfter = 4000, TreeTries = 10;

    private readonly StripPieces pieces;
    private readonly int least, usable;
    private readonly StripRows rows;
    private readonly StripFill fill;
    private readonly Chance chance;
    private readonly int length;
    private readonly StripTree? tree;
    private long waste, bestLeft, budget;
    private int step, goal, walks, sinceTree, trees;
    private double reach = 0.5;

    internal StripWalk(StripPieces pieces, StripProblem problem, int least, StripRecord start, long seed)
    {
        this.pieces = pieces;
        this.least = least;
        usable = problem.Usable;
        Best = start;
        rows = new(pieces);
        fill = new(pieces, problem, rows.Words);
        chance = new(seed);
        length = (int)Math.Clamp(WalkWork / pieces.Count, 300, 20_000);
        step = length;
        tree = StripTree.Serves(pieces, problem) ? new(pieces, problem, seed + 7919) : null;
    }

    /// <summary>The lowest strip known.</summary>
    internal StripRecord Best { get; private set; }

    /// <summary>Takes over another worker's strip where it is lower.</summary>
    internal void Adopt(StripRecord other)
    {
        if (other.Height < Best.Height)
            Best = other;
    }

    /// <summary>Goes on for a number of fillings, or until the least height is reached.</summary>
    internal void Run(long fillings, CancellationToken stop)
    {
        for (long i = 0; i < fillings && Best.Height > least && !stop.IsCancellationRequested; i++)
        {
            if (step >= length || goal >= Best.Height)
                Begin();
            else
                Step();
            if (tree is not null && ++sinceTree >= TreeAfter)
                Climb(tree, stop);
        }
    }

    // Mostly for the least height, where little may be wasted and the tree is narrow.
    private void Climb(StripTree small, CancellationToken stop)
    {
        sinceTree = 0;
        for (int i = 0; i < TreeTries && Best.Height > least && !stop.IsCancellationRequested; i++)
        {
            int upTo = ++trees % 4 > 0 ? least : least + chance.Below(Best.Height - least);
            if (small.Try(upTo) is { } found)
                Best = found;
        }
    }

    // Aims lower the more, the better the last aims were reached.
    private void Begin()
    {
        int room = Best.Height - least;
        goal = Best.Height - Math.Max(1, (int)(room * reach));
        reach = reach < 1.0 / 64 ? 0.25 : reach / 2;
        budget = ((long)usable * goal) - pieces.Area;
        rows.Set(Best.Copies, Best.Preferred);
        int kicks = walks++ == 0 ? 0 : walks % 3 == 0 ? pieces.Count * 4 : (pieces.Count / 4) + 1;
        for (int i = 0; i < kicks; i++)
            rows.Swap(chance.Below(pieces.Count), chance.Below(pieces.Count));
        step = 0;
        waste = fill.Run(rows, goal, long.MaxValue);
        bestLeft = long.MaxValue;
        Note();
    }

    private void Step()
    {
        double temperature = Warm[walks % Warm.Length] * pieces.Area / pieces.Count * (1 - ((double)step++ / length));
        int one = chance.Below(pieces.Count), other = chance.Below(pieces.Count);
        double kind = chance.Share(), luck = chance.Share();
        bool turn = pieces.Ways == 2 && kind < TurnShare;
        if (!turn && rows.PieceAt(one) == rows.PieceAt(other))
            return;

        Move(turn, one, other);
        long most = waste - (long)(temperature * Math.Log(luck + 1e-12));
        long now = fill.Run(rows, goal, most);
        if (now < 0)
        {
            Move(turn, one, other);
            return;
        }

        waste = now;
        Note();
    }

    private void Move(bool turn, int one, int other)
    {
        if (turn)
            rows.Turn(one);
        else
            rows.Swap(one, other);
    }

    // Keeps the filling where it is lower than the best once the rest is put on top.
    private void Note()
    {
        long left = waste - budget;
        bool all = fill.Placed == pieces.Count;
        if (!all && left >= bestLeft)
            return;

        bestLeft = left;
        fill.Finish(rows, Best.Height - 1);
        if (fill.Placed < pieces.Count)
            return;

        reach = all ? Math.Min(0.5, reach * 4) : reach;
        int[] copies = new int[pieces.Count], preferred = new int[pieces.Count];
        rows.Get(copies, preferred);
        Best = new(fill.Top, copies, preferred, [.. fill.Ways], [.. fill.Xs], [.. fill.Ys]);
    }
}
