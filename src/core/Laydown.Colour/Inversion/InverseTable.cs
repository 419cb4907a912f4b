using Laydown.Colour.Spaces;

namespace Laydown.Colour.Inversion;

/// <summary>Inks for every node of a colour grid, found from the neighbours already known.</summary>
internal sealed class InverseTable
{
    // Far outside the gamut the neighbours lead to the right place; starts from everywhere are for the first steps outside.
    private const double FarOutside = 4;
    private readonly int steps, zeroA, zeroB, inks;
    private readonly InverseAxes axes;

    private InverseTable(InverseAxes axes, int inks)
    {
        (this.axes, this.inks, steps) = (axes, inks, axes.L.Count);
        (zeroA, zeroB) = (axes.NeutralA, axes.NeutralB);
        Inks = new float[steps * steps * steps * inks];
        Distance = new float[steps * steps * steps];
    }

    /// <summary>Inks of each node, L* slowest.</summary>
    internal float[] Inks { get; }

    /// <summary>How far each node lies outside.</summary>
    internal float[] Distance { get; }

    /// <summary>Fills a table.</summary>
    /// <param name="inverse">Finds inks.</param>
    /// <param name="axes">Where the nodes lie.</param>
    /// <param name="map">Colour to print for the colour of a node.</param>
    /// <param name="like">A table made before for other wishes, whose inks are good starts; or null.</param>
    /// <param name="cancellation">Looked at before each plane.</param>
    internal static InverseTable Fill(InkInverse inverse, InverseAxes axes, Func<Lab, Lab> map, InverseTable? like, CancellationToken cancellation)
    {
        InverseTable table = new(axes, inverse.Inks);

        // From white downward, and outward from the neutral axis, so that every node has a neighbour already solved nearer to the gamut.
        // The two axes of a plane first, then its four quarters, which know only themselves, the axes and the plane above.
        for (int l = table.steps - 1; l >= 0; l--)
        {
            cancellation.ThrowIfCancellationRequested();
            int plane = l;
            table.SolveNode(inverse, map, like, plane, table.zeroA, table.zeroB);
            Parallel.For(0, 4, arm => table.Walk(arm is 0 or 1 ? arm : null, arm is 2 or 3 ? arm - 2 : null, (a, b) => table.SolveNode(inverse, map, like, plane, a, b)));
            Parallel.For(0, 4, quarter => table.Walk(quarter % 2, quarter / 2, (a, b) => table.SolveNode(inverse, map, like, plane, a, b)));
        }

        return table;
    }

    // Outward from the axes: down (0) or up (1) along a* and b*; null stays on the axis.
    private void Walk(int? alongA, int? alongB, Action<int, int> visit)
    {
        foreach (int a in Outward(alongA, zeroA))
            foreach (int b in Outward(alongB, zeroB))
                visit(a, b);
    }

    private IEnumerable<int> Outward(int? direction, int zero) => direction switch
    {
        null => [zero],
        0 => Enumerable.Range(1, zero).Select(off => zero - off),
        _ => Enumerable.Range(zero + 1, steps - 1 - zero),
    };

    private void SolveNode(InkInverse inverse, Func<Lab, Lab> map, InverseTable? like, int l, int a, int b)
    {
        // Start from the neighbour nearer to the neutral axis, on the axis from the node above.
        Span<double> start = stackalloc double[inks];
        int inA = a - Math.Sign(a - zeroA), inB = b - Math.Sign(b - zeroB), above = Math.Min(l + 1, steps - 1);
        Take(a == zeroA && b == zeroB ? above : l, b == zeroB ? inA : a, inB, start);

        // A table made before, for other wishes, gives nearly the same inks; without one the other neighbours help.
        bool enough = like is not null || Distance[Index(l, inA, inB)] > FarOutside;
        double[] others = new double[(2 * inks) + (enough ? 0 : inverse.EverywhereStarts.Count)];
        (like ?? this).Take(l, like is null ? inA : a, b, others);
        Take(above, a, b, others.AsSpan(inks));
        for (int i = 2 * inks; i < others.Length; i++)
            others[i] = inverse.EverywhereStarts[i - (2 * inks)];
        Separated found = inverse.Solve(map(axes.Node(l, a, b)), start, others);
        Keep(inverse.Limits, Index(l, a, b), start, found);
    }

    private int Index(int l, int a, int b) => (((l * steps) + a) * steps) + b;

    private void Take(int l, int a, int b, Span<double> start)
    {
        int index = Index(l, a, b) * inks;
        for (int ink = 0; ink < inks; ink++)
            start[ink] = Inks[index + ink];
    }

    private void Keep(InkLimits limits, int index, ReadOnlySpan<double> found, Separated how)
    {
        Distance[index] = (float)how.Distance;
        for (int ink = 0; ink < inks; ink++)
            Inks[(index * inks) + ink] = found[ink] < 5e-5 ? 0 : (float)Math.Min(found[ink], limits.PerInk[ink]);
    }
}
