namespace Laydown.Colour.Inversion;

/// <summary>One damped Gauss–Newton step that stays inside ink limits.</summary>
internal static class BoundedStep
{
    private const int N = InkInverse.Inks;
    private const double Edge = 1e-9;

    /// <summary>Moves the coverages; returns the largest move of one ink.</summary>
    /// <param name="coverages">Where the search stands; receives the new point.</param>
    /// <param name="residual">Residuals there.</param>
    /// <param name="slopes">For each ink the change of each residual.</param>
    /// <param name="damping">Added to the diagonal as a part of it.</param>
    /// <param name="limits">The limits.</param>
    internal static double Take(Span<double> coverages, ReadOnlySpan<double> residual, ReadOnlySpan<double> slopes, double damping, InkLimits limits)
    {
        Span<double> normal = stackalloc double[N * N], gradient = stackalloc double[N];
        Normal(residual, slopes, damping, normal, gradient);

        // Inks that stand at a limit and want to go beyond it stay where they are.
        Span<bool> free = stackalloc bool[N];
        double sum = 0;
        for (int ink = 0; ink < N; ink++)
        {
            sum += coverages[ink];
            free[ink] = !(coverages[ink] <= Edge && gradient[ink] > 0) && !(coverages[ink] >= limits.PerInk[ink] - Edge && gradient[ink] < 0);
        }

        Span<double> step = stackalloc double[N];
        Direction(normal, gradient, free, step);
        if (sum >= limits.Total - Edge)
            KeepSum(normal, free, step);

        Span<double> before = stackalloc double[N];
        coverages.CopyTo(before);
        for (int ink = 0; ink < N; ink++)
            coverages[ink] += step[ink];
        limits.Project(coverages);
        double moved = 0;
        for (int ink = 0; ink < N; ink++)
            moved = Math.Max(moved, Math.Abs(coverages[ink] - before[ink]));
        return moved;
    }

    private static void Normal(ReadOnlySpan<double> residual, ReadOnlySpan<double> slopes, double damping, Span<double> normal, Span<double> gradient)
    {
        for (int i = 0; i < N; i++)
        {
            gradient[i] = Dot(slopes.Slice(i * N, N), residual);
            for (int j = 0; j < N; j++)
                normal[(i * N) + j] = Dot(slopes.Slice(i * N, N), slopes.Slice(j * N, N));
        }

        for (int i = 0; i < N; i++)
            normal[(i * N) + i] = (normal[(i * N) + i] * (1 + damping)) + 1e-12;
    }

    private static double Dot(ReadOnlySpan<double> one, ReadOnlySpan<double> other)
    {
        double sum = 0;
        for (int i = 0; i < one.Length; i++)
            sum += one[i] * other[i];
        return sum;
    }

    private static void Direction(ReadOnlySpan<double> normal, ReadOnlySpan<double> gradient, ReadOnlySpan<bool> free, Span<double> step)
    {
        for (int ink = 0; ink < N; ink++)
            step[ink] = -gradient[ink];
        SolveFree(normal, free, step);
    }

    // With the sum at its limit a step may not raise it: take away what does, along the direction that costs least.
    private static void KeepSum(ReadOnlySpan<double> normal, ReadOnlySpan<bool> free, Span<double> step)
    {
        double rise = 0;
        foreach (double part in step)
            rise += part;
        if (rise <= 0)
            return;

        Span<double> along = stackalloc double[N];
        along.Fill(1);
        SolveFree(normal, free, along);
        double whole = 0;
        foreach (double part in along)
            whole += part;
        for (int ink = 0; ink < N && whole > 0; ink++)
            step[ink] -= along[ink] * rise / whole;
    }

    // Gaussian elimination without pivoting, which a symmetric positive matrix allows; held inks get no step.
    private static void SolveFree(ReadOnlySpan<double> normal, ReadOnlySpan<bool> free, Span<double> value)
    {
        Span<double> m = stackalloc double[N * N];
        for (int i = 0; i < N; i++)
        {
            value[i] = free[i] ? value[i] : 0;
            for (int j = 0; j < N; j++)
                m[(i * N) + j] = free[i] && free[j] ? normal[(i * N) + j] : i == j ? 1 : 0;
        }

        for (int pivot = 0; pivot < N; pivot++)
        {
            for (int row = pivot + 1; row < N; row++)
            {
                double factor = m[(row * N) + pivot] / m[(pivot * N) + pivot];
                for (int column = pivot; column < N; column++)
                    m[(row * N) + column] -= factor * m[(pivot * N) + column];
                value[row] -= factor * value[pivot];
            }
        }

        for (int row = N - 1; row >= 0; row--)
        {
            for (int column = row + 1; column < N; column++)
                value[row] -= m[(row * N) + column] * value[column];
            value[row] /= m[(row * N) + row];
        }
    }
}
