using Laydown.Colour.Curves;
using Laydown.Colour.Inks;

namespace Laydown.Colour.Fits;

/// <summary>Nodes over all inks: every combination of some levels of each.</summary>
/// <param name="levels">Ink of the nodes, for each ink from 0 to 1.</param>
/// <param name="nodes">The same as effective coverages.</param>
/// <param name="curves">From ink to effective coverage.</param>
internal sealed class Lattice(IReadOnlyList<double[]> levels, double[][] nodes, IReadOnlyList<CoverageCurve> curves)
{
    private const double Near = 1e-4;
    private const int MostNodes = 1500;
    private const double LeastMeasured = 0.5;

    private int Inks => levels.Count;

    private int Count => levels.Aggregate(1, (n, l) => n * l.Length);

    /// <summary>Levels on which a chart has measured most combinations: grown from paper and solid as long as they are.</summary>
    internal static IReadOnlyList<double[]> Find(FitPoints points)
    {
        int inks = points.Inks[0].Length;
        double[][] found = [.. Enumerable.Range(0, inks).Select(_ => new double[] { 0, 1 })];
        double[][] all = [.. Enumerable.Range(0, inks).Select(i => points.Inks.Select(p => p[i]).Distinct().Order().ToArray())];
        int measured = Measured(points, found);
        while (true)
        {
            // The level that brings most measured nodes, where most of the lattice stays measured.
            (double[][]? Levels, int Measured) best = (null, measured);
            for (int ink = 0; ink < inks; ink++)
            {
                foreach (double level in all[ink].Where(l => found[ink].All(f => Math.Abs(f - l) > 0.15)))
                {
                    double[][] grown = [.. found];
                    grown[ink] = [.. found[ink].Append(level).Order()];
                    int nodes = grown.Aggregate(1, (n, l) => n * l.Length), seen = nodes <= MostNodes ? Measured(points, grown) : 0;
                    if (seen >= LeastMeasured * nodes && seen > best.Measured)
                        best = (grown, seen);
                }
            }

            if (best.Levels is null)
                return found;
            (found, measured) = (best.Levels, best.Measured);
        }
    }

    /// <summary>Which points lie on nodes.</summary>
    internal static bool[] OnNodes(FitPoints points, IReadOnlyList<double[]> levels) => [.. points.Inks.Select(p => NodeOf(p, levels) >= 0)];

    /// <summary>Roots at all nodes.</summary>
    internal float[] Solve(FitPoints points, RootSpace space, double hold, CancellationToken cancellation)
    {
        int count = Count;
        double[] roots = points.Roots(space), value = new double[3 * count];
        bool[] known = new bool[count];
        for (int point = 0; point < points.Count; point++)
        {
            if (NodeOf(points.Inks[point], levels) is int node and >= 0)
            {
                known[node] = true;
                roots.AsSpan(3 * point, 3).CopyTo(value.AsSpan(3 * node));
            }
        }

        int[] open = [.. Enumerable.Range(0, count).Where(n => !known[n])];
        if (open.Length > 0)
        {
            Guess(points, space, value, open);
            SolveOpen(points, roots, value, open, hold, cancellation);
        }

        return [.. value.Select(v => (float)Math.Clamp(v, 0, 2))];
    }

    // Single inks over each other multiply; good enough to lean on lightly.
    private void Guess(FitPoints points, RootSpace space, double[] value, int[] open)
    {
        double[] roots = points.Roots(space);
        double[][][] alone = [.. Enumerable.Range(0, Inks).Select(ink => levels[ink].Select(l => NearestAlone(points, roots, ink, l)).ToArray())];
        foreach (int node in open)
        {
            for (int axis = 0; axis < 3; axis++)
            {
                double product = alone[0][0][axis];
                for (int ink = 0, rest = node, stride = Count; ink < Inks; ink++)
                {
                    stride /= levels[ink].Length;
                    product *= alone[ink][rest / stride][axis] / Math.Max(1e-6, alone[ink][0][axis]);
                    rest %= stride;
                }

                value[(3 * node) + axis] = product;
            }
        }
    }

    private static double[] NearestAlone(FitPoints points, double[] roots, int ink, double level)
    {
        int best = Enumerable.Range(0, points.Count)
            .MinBy(p => Math.Abs(points.Inks[p][ink] - level) + (10 * points.Inks[p].Where((_, i) => i != ink).Sum()));
        return [.. roots.AsSpan(3 * best, 3)];
    }

    private void SolveOpen(FitPoints points, double[] roots, double[] value, int[] open, double hold, CancellationToken cancellation)
    {
        // Normal equations over the open nodes; known nodes move to the right side.
        int size = open.Length;
        int[] place = new int[Count];
        Array.Fill(place, -1);
        foreach ((int i, int node) in open.Index())
            place[node] = i;
        double[] normal = new double[size * size], right = new double[3 * size];
        for (int i = 0; i < size; i++)
        {
            normal[(i * size) + i] = hold;
            for (int axis = 0; axis < 3; axis++)
                right[(axis * size) + i] = hold * value[(3 * open[i]) + axis];
        }

        Span<double> share = stackalloc double[1 << Inks];
        Span<int> corner = stackalloc int[1 << Inks];
        for (int point = 0; point < points.Count; point++)
        {
            Corners(points.Inks[point], share, corner);
            Add(roots.AsSpan(3 * point, 3), value, place, share, corner, (normal, right));
        }

        if (!Cholesky.Factor(normal, size, cancellation))
            return;
        for (int axis = 0; axis < 3; axis++)
        {
            Cholesky.Solve(normal, size, right.AsSpan(axis * size, size));
            for (int i = 0; i < size; i++)
                value[(3 * open[i]) + axis] = right[(axis * size) + i];
        }
    }

    private static void Add(
        ReadOnlySpan<double> root, double[] value, int[] place, ReadOnlySpan<double> share, ReadOnlySpan<int> corner,
        (double[] Normal, double[] Right) equations)
    {
        int size = equations.Right.Length / 3;
        for (int axis = 0; axis < 3; axis++)
        {
            double rest = root[axis];
            for (int j = 0; j < share.Length; j++)
                rest -= place[corner[j]] < 0 ? share[j] * value[(3 * corner[j]) + axis] : 0;
            for (int j = 0; j < share.Length; j++)
            {
                if (place[corner[j]] >= 0)
                    equations.Right[(axis * size) + place[corner[j]]] += share[j] * rest;
            }
        }

        for (int j = 0; j < share.Length; j++)
        {
            for (int k = 0; k < share.Length && place[corner[j]] >= 0; k++)
            {
                if (place[corner[k]] >= 0)
                    equations.Normal[(place[corner[j]] * size) + place[corner[k]]] += share[j] * share[k];
            }
        }
    }

    private void Corners(double[] inks, Span<double> share, Span<int> corner)
    {
        Span<double> inside = stackalloc double[Inks];
        Span<int> step = stackalloc int[Inks];
        int lowest = 0;
        for (int ink = 0, stride = Count; ink < Inks; ink++)
        {
            stride /= levels[ink].Length;
            double covered = curves[ink].At(inks[ink]);
            double[] axis = nodes[ink];
            int cell = 0;
            while (cell < axis.Length - 2 && axis[cell + 1] <= covered)
                cell++;
            inside[ink] = (covered - axis[cell]) / (axis[cell + 1] - axis[cell]);
            lowest += cell * stride;
            step[ink] = stride;
        }

        Demichel.Shares(inside, share);
        for (int j = 0; j < share.Length; j++)
        {
            corner[j] = lowest;
            for (int ink = 0; ink < Inks; ink++)
                corner[j] += ((j >> ink) & 1) * step[ink];
        }
    }

    private static int Measured(FitPoints points, double[][] levels) =>
        points.Inks.Select(p => NodeOf(p, levels)).Where(n => n >= 0).Distinct().Count();

    private static int NodeOf(double[] inks, IReadOnlyList<double[]> levels)
    {
        int node = 0;
        for (int ink = 0; ink < inks.Length; ink++)
        {
            double wanted = inks[ink];
            int level = Array.FindIndex(levels[ink], l => Math.Abs(l - wanted) < Near);
            if (level < 0)
                return -1;
            node = (node * levels[ink].Length) + level;
        }

        return node;
    }
}
