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
    /// <summary>Distance of nodes: lightness, and the two colour axes.</summary>
    internal const double StepL = 6.25, StepAb = 8;

    private const int Wide = 4, Origin = 512, Bits = 10, NodeSteps = 40;
    private readonly PairSolver solver;
    private readonly ConcurrentDictionary<ulong, float[]> nodes = new(), wide = new();

    internal PairTable(PairSolver solver) => this.solver = solver;

    /// <summary>The exact way behind it.</summary>
    internal PairSolver Solver => solver;

    /// <summary>Nodes solved until now.</summary>
    internal int NodeCount => nodes.Count;

    /// <summary>Inks for a pair.</summary>
    /// <param name="pair">L*, a*, b* wanted by day, then lit.</param>
    /// <param name="inks">Receives inks in front, then behind; limits hold.</param>
    internal void Inks(ReadOnlySpan<float> pair, Span<float> inks)
    {
        Span<int> cell = stackalloc int[6], order = stackalloc int[6];
        Span<float> part = stackalloc float[6];
        for (int axis = 0; axis < 6; axis++)
        {
            double at = pair[axis] / (axis % 3 == 0 ? StepL : StepAb);
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

    /// <summary>Inks of a node, for tests and counts.</summary>
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
        Span<double> inks = stackalloc double[solver.InkCount];
        float[] start = WideNode(near);
        for (int ink = 0; ink < inks.Length; ink++)
            inks[ink] = start[ink];
        (Lab day, Lab night) = At(cell);
        solver.Refine(day, night, inks, NodeSteps);
        return Narrow(inks);
    }

    private float[] WideNode(ReadOnlySpan<int> cell)
    {
        ulong key = Key(cell);
        if (wide.TryGetValue(key, out float[]? known))
            return known;
        Span<double> inks = stackalloc double[solver.InkCount];
        (Lab day, Lab night) = At(cell);
        solver.Solve(day, night, inks);
        return wide.GetOrAdd(key, Narrow(inks));
    }

    private static (Lab Day, Lab Night) At(ReadOnlySpan<int> cell) =>
        (new(cell[0] * StepL, cell[1] * StepAb, cell[2] * StepAb), new(cell[3] * StepL, cell[4] * StepAb, cell[5] * StepAb));

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
