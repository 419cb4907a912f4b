using Laydown.Colour.Spaces;

namespace Laydown.Colour.Fits;

/// <summary>Regression by a Gaussian process: every reading pulls its neighbourhood, as far as the kernel reaches [Rasmussen2006].</summary>
/// <remarks>Three outputs, the roots of X, Y, Z, share one kernel and one factored matrix.</remarks>
internal sealed class Regression
{
    private readonly InkKernel kernel;
    private readonly FitPoints points;
    private readonly double[] mean = new double[3];
    private readonly double[][] pull = [[], [], []];

    private Regression(InkKernel kernel, FitPoints points, RootSpace space) => (this.kernel, this.points, Space) = (kernel, points, space);

    /// <summary>Scale of the outputs.</summary>
    internal RootSpace Space { get; }

    /// <summary>Fits to points.</summary>
    /// <returns>The regression, or null where the kernel makes the matrix not positive.</returns>
    internal static Regression? Fit(InkKernel kernel, FitPoints points, RootSpace space, CancellationToken cancellation)
    {
        Regression fit = new(kernel, points, space);
        if (Factor(kernel, points, cancellation) is not { } factor)
            return null;
        fit.Pull(factor);
        return fit;
    }

    /// <summary>ΔE00 of each point predicted from all others, without fitting anew for each.</summary>
    /// <remarks>The error at point i is (K⁻¹y)ᵢ / (K⁻¹)ᵢᵢ [Rasmussen2006, eq. 5.12].</remarks>
    internal static double[]? LeaveOneOut(InkKernel kernel, FitPoints points, RootSpace space, CancellationToken cancellation)
    {
        Regression fit = new(kernel, points, space);
        if (Factor(kernel, points, cancellation) is not { } factor)
            return null;
        double[] roots = fit.Pull(factor), diagonal = Cholesky.InverseDiagonal(factor, points.Count, cancellation), errors = new double[points.Count];
        Span<double> other = stackalloc double[3];
        for (int point = 0; point < points.Count; point++)
        {
            for (int axis = 0; axis < 3; axis++)
                other[axis] = roots[(3 * point) + axis] - (fit.pull[axis][point] / diagonal[point]);
            errors[point] = Ciede2000.Between(points.Colours[point], Lab.From(space.Colour(other), WhitePoints.Pcs));
        }

        return errors;
    }

    /// <summary>Roots at one mixture.</summary>
    internal void Predict(ReadOnlySpan<double> inks, Span<double> roots)
    {
        mean.CopyTo(roots);
        for (int point = 0; point < points.Count; point++)
        {
            double product = 1, shortProduct = kernel.ShortShare;
            double[] at = points.Inks[point];
            for (int ink = 0; ink < at.Length; ink++)
            {
                product *= kernel.LongFactor(ink, inks[ink], at[ink]);
                shortProduct *= kernel.ShortFactor(ink, inks[ink], at[ink]);
            }

            for (int axis = 0; axis < 3; axis++)
                roots[axis] += (product + shortProduct) * pull[axis][point];
        }
    }

    /// <summary>Roots on a whole grid: as the kernel is a product, factors are taken once for each level and ink.</summary>
    /// <param name="levels">Levels of each ink.</param>
    /// <param name="cancellation">Looked at before each slice.</param>
    /// <returns>Three roots for each node; first ink slowest.</returns>
    internal float[] OnGrid(IReadOnlyList<double[]> levels, CancellationToken cancellation)
    {
        // Factors of the inks after the first, for each point: shares of a slice; the first ink's factor then weighs the slice.
        int inks = levels.Count, sliceNodes = levels.Skip(1).Aggregate(1, (n, l) => n * l.Length);
        float[] grid = new float[levels[0].Length * sliceNodes * 3];
        Parallel.For(0, levels[0].Length, new ParallelOptions { CancellationToken = cancellation }, first =>
        {
            double[] sums = new double[3 * sliceNodes], longs = new double[sliceNodes], shorts = new double[sliceNodes];
            for (int point = 0; point < points.Count; point++)
            {
                double[] at = points.Inks[point];
                Spread(longs, kernel.LongFactor(0, levels[0][first], at[0]), levels, at, kernel.LongFactor);
                Spread(shorts, kernel.ShortShare * kernel.ShortFactor(0, levels[0][first], at[0]), levels, at, kernel.ShortFactor);
                for (int axis = 0; axis < 3; axis++)
                    AddTimes(sums.AsSpan(axis * sliceNodes, sliceNodes), longs, shorts, pull[axis][point]);
            }

            for (int node = 0; node < sliceNodes; node++)
                for (int axis = 0; axis < 3; axis++)
                    grid[(((first * sliceNodes) + node) * 3) + axis] = (float)(mean[axis] + sums[(axis * sliceNodes) + node]);
        });
        return grid;
    }

    private static void AddTimes(Span<double> sums, ReadOnlySpan<double> longs, ReadOnlySpan<double> shorts, double factor)
    {
        int width = System.Numerics.Vector<double>.Count, at = 0;
        for (; at <= sums.Length - width; at += width)
        {
            System.Numerics.Vector<double> both = new System.Numerics.Vector<double>(longs[at..]) + new System.Numerics.Vector<double>(shorts[at..]);
            (new System.Numerics.Vector<double>(sums[at..]) + (both * factor)).CopyTo(sums[at..]);
        }

        for (; at < sums.Length; at++)
            sums[at] += (longs[at] + shorts[at]) * factor;
    }

    // The product over the inks after the first on all nodes of a slice.
    private static void Spread(double[] target, double start, IReadOnlyList<double[]> levels, double[] at, Func<int, double, double, double> factor)
    {
        target[0] = start;
        int filled = 1;
        Span<double> row = stackalloc double[64];
        for (int ink = levels.Count - 1; ink >= 1; ink--)
        {
            // Later inks run faster, so each new ink repeats what stands once for each of its levels.
            double[] own = levels[ink];
            for (int level = 0; level < own.Length; level++)
                row[level] = factor(ink, own[level], at[ink]);
            for (int level = own.Length - 1; level >= 0; level--)
                for (int node = 0; node < filled; node++)
                    target[(level * filled) + node] = target[node] * row[level];
            filled *= own.Length;
        }
    }

    private static double[]? Factor(InkKernel kernel, FitPoints points, CancellationToken cancellation)
    {
        int size = points.Count;
        FactorTable table = new(kernel, points.Inks);
        double[] matrix = new double[size * size];
        Parallel.For(0, size, new ParallelOptions { CancellationToken = cancellation }, row =>
        {
            for (int column = 0; column <= row; column++)
                matrix[(row * size) + column] = table.Between(row, column);
            matrix[(row * size) + row] += kernel.Noise;
        });
        return Cholesky.Factor(matrix, size, cancellation) ? matrix : null;
    }

    // Solves for the three outputs; returns their roots.
    private double[] Pull(double[] factor)
    {
        double[] roots = points.Roots(Space);
        for (int axis = 0; axis < 3; axis++)
        {
            double[] right = new double[points.Count];
            for (int point = 0; point < points.Count; point++)
                mean[axis] += roots[(3 * point) + axis] / points.Count;
            for (int point = 0; point < points.Count; point++)
                right[point] = roots[(3 * point) + axis] - mean[axis];
            Cholesky.Solve(factor, points.Count, right);
            pull[axis] = right;
        }

        return roots;
    }
}
