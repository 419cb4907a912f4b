namespace Laydown.Colour.Inversion;

/// <summary>One damped Gauss–Newton step that stays inside ink limits.</summary>
internal static class BoundedStep
{
    private const int MostInks = 8;
    private const double Edge = 1e-9;

    /// <summary>Moves the coverages; returns the largest move of one ink.</summary>
    /// <param name="coverages">Where the search stands; receives the new point.</param>
    /// <param name="normal">JᵀJ of the residuals there, inks × inks.</param>
    /// <param name="gradient">Jᵀr there.</param>
    /// <param name="damping">Added to the diagonal as a part of it.</param>
    /// <param name="limits">The limits.</param>
    internal static double Take(Span<double> coverages, ReadOnlySpan<double> normal, ReadOnlySpan<double> gradient, double damping, InkLimits limits)
    {
        int inks = coverages.Length;
        Span<double> damped = stackalloc double[MostInks * MostInks];
        damped = damped[..(inks * inks)];
        normal.CopyTo(damped);
        for (int i = 0; i < inks; i++)
            damped[(i * inks) + i] = (damped[(i * inks) + i] * (1 + damping)) + 1e-12;

        // Inks that stand at a limit and want to go beyond it stay where they are.
        Span<bool> free = stackalloc bool[MostInks];
        double sum = 0;
        for (int ink = 0; ink < inks; ink++)
        {
            sum += coverages[ink];
            free[ink] = !(coverages[ink] <= Edge && gradient[ink] > 0) && !(coverages[ink] >= limits.PerInk[ink] - Edge && gradient[ink] < 0);
        }

        Span<double> step = stackalloc double[MostInks], before = stackalloc double[MostInks];
        step = step[..inks];
        before = before[..inks];
        for (int ink = 0; ink < inks; ink++)
            step[ink] = -gradient[ink];
        SolveFree(damped, free, step);
        if (sum >= limits.Total - Edge)
            KeepSum(damped, free, step);

        coverages.CopyTo(before);
        for (int ink = 0; ink < inks; ink++)
            coverages[ink] += step[ink];
        limits.Project(coverages);
        double moved = 0;
        for (int ink = 0; ink < inks; ink++)
            moved = Math.Max(moved, Math.Abs(coverages[ink] - before[ink]));
        return moved;
    }

    // With the sum at its limit a step may not raise it: take away what does, along the direction that costs least.
    private static void KeepSum(ReadOnlySpan<double> normal, ReadOnlySpan<bool> free, Span<double> step)
    {
        double rise = 0;
        foreach (double part in step)
            rise += part;
        if (rise <= 0)
            return;

        Span<double> along = stackalloc double[MostInks];
        along = along[..step.Length];
        along.Fill(1);
        SolveFree(normal, free, along);
        double whole = 0;
        foreach (double part in along)
            whole += part;
        for (int ink = 0; ink < step.Length && whole > 0; ink++)
            step[ink] -= along[ink] * rise / whole;
    }

    // Gaussian elimination without pivoting, which a symmetric positive matrix allows; held inks get no step.
    private static void SolveFree(ReadOnlySpan<double> normal, ReadOnlySpan<bool> free, Span<double> value)
    {
        int n = value.Length;
        Span<double> m = stackalloc double[MostInks * MostInks];
        for (int i = 0; i < n; i++)
        {
            value[i] = free[i] ? value[i] : 0;
            for (int j = 0; j < n; j++)
                m[(i * n) + j] = free[i] && free[j] ? normal[(i * n) + j] : i == j ? 1 : 0;
        }

        for (int pivot = 0; pivot < n; pivot++)
        {
            for (int row = pivot + 1; row < n; row++)
            {
                double factor = m[(row * n) + pivot] / m[(pivot * n) + pivot];
                for (int column = pivot; column < n; column++)
                    m[(row * n) + column] -= factor * m[(pivot * n) + column];
                value[row] -= factor * value[pivot];
            }
        }

        for (int row = n - 1; row >= 0; row--)
        {
            for (int column = row + 1; column < n; column++)
                value[row] -= m[(row * n) + column] * value[column];
            value[row] /= m[(row * n) + row];
        }
    }
}
