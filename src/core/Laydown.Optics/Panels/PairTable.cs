using System.Collections.Concurrent;
using Laydown.Colour.Spaces;

namespace Laydown.Optics.Panels;

/// <summary>Inks for pairs of colours from a table that is filled where pictures need it.</summary>
/// <remarks>
/// Nodes stand on an even grid of both colours, six numbers; natural pairs touch few of them, so a node is solved when it is first asked
/// for and kept. Between nodes inks are linear on the simplex of the Kuhn triangulation around a pair: seven nodes instead of 64
/// [Kuhn1960]. A node starts from a node of a grid four times as wide, never from its neighbours: the same inks whoever asks first.
/// </remarks>
internal sealed class PairTable
{
    /// <summary>Distance of nodes: lightness, and the two colour axes. Measured with a pair of noise: within 0.2 ΔE00
    /// of the exact search on the mean in both views, 1.1 for all but a hundredth; with a pair of few colours and fine nodes 0.1 by day and 0.2 lit,
    /// 0.8 and 1.8.</summary>
    internal const double StepL = 6.25, StepAb = 8;

    private const int Wide = 4, Origin = 512, Bits = 10, NodeSteps = 40, QuickSteps = 12;
    private const double Enough = 1e-4;
    private readonly PairSolver solver;
    private readonly double stepL, stepAb;
    private readonly Func<double[], float[]>? show;
    private readonly ConcurrentDictionary<ulong, float[]> nodes = new(), wide = new();

    /// <summary>A table of tones.</summary>
    /// <param name="solver">The exact way.</param>
    /// <param name="fine">Whether nodes stand half as far apart: for pictures of few colours.</param>
    internal PairTable(PairSolver solver, bool fine) => (this.solver, stepL, stepAb) = (solver, fine ? StepL / 2 : StepL, fine ? StepAb / 2 : StepAb);

    /// <summary>How many cells of a fine table pixels fall into.</summary>
    /// <param name="pairs">The pictures.</param>
    /// <param name="sample">Pixels that are looked at.</param>
    internal static int FineCells(PairPicture pairs, int[] sample)
    {
        HashSet<ulong> cells = [];
        Span<int> cell = stackalloc int[6];
        foreach (int pixel in sample)
        {
            ReadOnlySpan<float> pair = pairs.At(pixel);
            for (int axis = 0; axis < 6; axis++)
                cell[axis] = (int)Math.Floor(Math.Clamp(2 * pair[axis] / (axis % 3 == 0 ? StepL : StepAb), -400, 400));
            cells.Add(Key(cell));
        }

        return cells.Count;
    }

    /// <summary>A table of what inks give, with nodes twice as far apart: for looking at, not for printing.</summary>
    /// <param name="solver">The exact way.</param>
    /// <param name="show">What is kept of a node's inks.</param>
    internal PairTable(PairSolver solver, Func<double[], float[]> show) =>
        (this.solver, this.show, stepL, stepAb) = (solver, show, 2 * StepL, 2 * StepAb);

    /// <summary>The exact way behind it.</summary>
    internal PairSolver Solver => solver;

    /// <summary>Nodes solved until now.</summary>
    internal int NodeCount => nodes.Count;

    /// <summary>Tones for a pair: inks, but one for a light and a dark ink of one hue.</summary>
    /// <param name="pair">L*, a*, b* wanted by day, then lit.</param>
    /// <param name="inks">Receives tones in front, then behind, sums to a hair within their limits; in a table that shows, what it shows.</param>
    internal void Inks(ReadOnlySpan<float> pair, Span<float> inks)
    {
        Span<int> cell = stackalloc int[6], order = stackalloc int[6];
        Span<float> part = stackalloc float[6];
        for (int axis = 0; axis < 6; axis++)
        {
            double at = pair[axis] / (axis % 3 == 0 ? stepL : stepAb);
            double floor = Math.Floor(Math.Clamp(at, -400, 400));
            (cell[axis], part[axis], order[axis]) = ((int)floor, (float)(Math.Clamp(at, -400, 400) - floor), axis);
        }

        // From the low corner along the axes of falling parts to the high corner: seven corners, weights are the steps between parts.
        SortFalling(part, order);
        inks.Clear();
        float before = 1;
        for (int corner = 0; corner <= 6; corner++)
        {
            float next = corner < 6 ? part[order[corner]] : 0, weight = before - next;
            if (weight > 0)
                Add(inks, Node(cell), weight);
            if (corner < 6)
                cell[order[corner]]++;
            before = next;
        }
    }

    /// <summary>What is kept of a node.</summary>
    internal float[] Node(ReadOnlySpan<int> cell)
    {
        ulong key = Key(cell);
        return nodes.TryGetValue(key, out float[]? known) ? known : nodes.GetOrAdd(key, Solved(cell));
    }

    private float[] Solved(ReadOnlySpan<int> cell)
    {
        Span<int> near = stackalloc int[6];
        for (int axis = 0; axis < 6; axis++)
            near[axis] = (int)Math.Floor((cell[axis] + (Wide / 2.0)) / Wide) * Wide;
        Span<double> inks = stackalloc double[solver.Tones.Count];
        float[] start = WideNode(near);
        for (int ink = 0; ink < inks.Length; ink++)
            inks[ink] = start[ink];
        (Lab day, Lab night) = At(cell);
        solver.Refine(day, night, inks, show is null ? NodeSteps : QuickSteps, Enough);
        if (show is null)
            return Narrow(inks);
        double[] all = new double[solver.InkCount];
        solver.Tones.Inks(inks, all);
        return show(all);
    }

    private float[] WideNode(ReadOnlySpan<int> cell)
    {
        ulong key = Key(cell);
        if (wide.TryGetValue(key, out float[]? known))
            return known;
        Span<double> inks = stackalloc double[solver.Tones.Count];
        (Lab day, Lab night) = At(cell);
        solver.SolveToWalls(day, night, inks);
        return wide.GetOrAdd(key, Narrow(inks));
    }

    private (Lab Day, Lab Night) At(ReadOnlySpan<int> cell) =>
        (new(cell[0] * stepL, cell[1] * stepAb, cell[2] * stepAb), new(cell[3] * stepL, cell[4] * stepAb, cell[5] * stepAb));

    private static ulong Key(ReadOnlySpan<int> cell)
    {
        ulong key = 0;
        foreach (int at in cell)
            key = (key << Bits) | (uint)(at + Origin);
        return key;
    }

    private static void Add(Span<float> inks, float[] node, float weight)
    {
        for (int ink = 0; ink < inks.Length; ink++)
            inks[ink] += weight * node[ink];
    }

    private static float[] Narrow(ReadOnlySpan<double> inks)
    {
        float[] narrow = new float[inks.Length];
        for (int ink = 0; ink < inks.Length; ink++)
            narrow[ink] = (float)inks[ink];
        return narrow;
    }

    private static void SortFalling(ReadOnlySpan<float> part, Span<int> order)
    {
        for (int i = 1; i < order.Length; i++)
        {
            int moving = order[i], at = i;
            for (; at > 0 && part[order[at - 1]] < part[moving]; at--)
                order[at] = order[at - 1];
            order[at] = moving;
        }
    }
}
