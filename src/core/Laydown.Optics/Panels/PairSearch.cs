using Laydown.Colour.Spaces;

namespace Laydown.Optics.Panels;

/// <summary>One search for one pair: damped Gauss–Newton steps within the bounds of the inks.</summary>
internal readonly ref struct PairSearch
{
    private readonly PairSolver solver;
    private readonly PairMetric day, night;
    private readonly double wall;

    internal PairSearch(PairSolver solver, Lab day, Lab night, double wall)
    {
        (this.solver, this.wall) = (solver, wall);
        (this.day, this.night) = (new(day, 1), new(night, solver.NightWeight));
    }

    /// <summary>Squares that are left for tones.</summary>
    internal double Left(ReadOnlySpan<double> tones)
    {
        Span<double> views = stackalloc double[6], difference = stackalloc double[6], inks = stackalloc double[solver.InkCount];
        solver.Tones.Inks(tones, inks);
        solver.Light.See(inks, views);
        Differences(views, difference, [], []);
        return Squares(difference) + Charges(tones, inks);
    }

    /// <summary>Goes downhill from the given inks, which receive the end; the inks' bounds hold.</summary>
    /// <param name="inks">Where it starts and ends.</param>
    /// <param name="mostSteps">Most steps.</param>
    /// <param name="enough">Share of what is left that a step must gain to go on; 0 goes to the very bottom.</param>
    internal double Descend(Span<double> inks, int mostSteps, double enough = 0)
    {
        int n = inks.Length;
        Span<double> slope = stackalloc double[n], square = stackalloc double[n * n], step = stackalloc double[n], trial = stackalloc double[n];
        double left = Expand(inks, slope, square), damping = 1e-3;
        for (int round = 0; round < mostSteps; round++)
        {
            if (!Step(inks, slope, square, damping, step))
                break;
            double longest = 0;
            for (int i = 0; i < n; i++)
            {
                trial[i] = Math.Clamp(inks[i] + step[i], 0, solver.Most[i]);
                longest = Math.Max(longest, Math.Abs(trial[i] - inks[i]));
            }

            if (longest < 1e-7)
                break;
            double next = Left(trial);
            if (!(next < left))
            {
                damping *= 5;
                if (damping > 1e8)
                    break;
                continue;
            }

            // Little gain under much damping only tells that the step was short.
            bool settled = (damping <= 1e-8 && left - next < (1e-4 * left) + 1e-9) || left - next < enough * (left + 0.01);
            trial.CopyTo(inks);
            damping = Math.Max(damping * 0.1, 1e-10);
            if (settled)
                return next;
            left = Expand(inks, slope, square);
        }

        return left;
    }

    // Value, half the slope and half the curvature (Gauss–Newton) of the squares.
    private double Expand(ReadOnlySpan<double> tones, Span<double> slope, Span<double> square)
    {
        int n = tones.Length, m = solver.InkCount;
        Span<double> views = stackalloc double[6], byInk = stackalloc double[6 * m], difference = stackalloc double[6];
        Span<double> rows = stackalloc double[6 * n], inks = stackalloc double[m], shares = stackalloc double[2 * n];
        solver.Tones.Inks(tones, inks);
        solver.Tones.Slopes(tones, shares);
        solver.Light.See(inks, views, byInk);
        Rows(views, byInk, shares, difference, rows);
        for (int i = 0; i < n; i++)
        {
            slope[i] = Dot(rows[(6 * i)..], difference);
            for (int j = 0; j <= i; j++)
                square[(i * n) + j] = square[(j * n) + i] = Dot(rows[(6 * i)..], rows[(6 * j)..]);
        }

        AddCharges(tones, inks, shares, slope, square);
        return Squares(difference) + Charges(tones, inks);
    }

    // The six weighted differences and how each changes with each tone.
    private void Rows(
        ReadOnlySpan<double> views, ReadOnlySpan<double> byInk, ReadOnlySpan<double> shares, Span<double> difference, Span<double> rows)
    {
        Span<double> byDay = stackalloc double[9], byNight = stackalloc double[9], at = stackalloc double[6];
        Differences(views, difference, byDay, byNight);
        for (int i = 0; i < solver.Tones.Count; i++)
        {
            int first = 6 * solver.Tones.First(i), second = 6 * solver.Tones.Second(i);
            for (int axis = 0; axis < 6; axis++)
                at[axis] = (shares[2 * i] * byInk[first + axis]) + (second < 0 ? 0 : shares[(2 * i) + 1] * byInk[second + axis]);
            for (int row = 0; row < 3; row++)
            {
                rows[(6 * i) + row] = (byDay[3 * row] * at[0]) + (byDay[(3 * row) + 1] * at[1]) + (byDay[(3 * row) + 2] * at[2]);
                rows[(6 * i) + 3 + row] = (byNight[3 * row] * at[3]) + (byNight[(3 * row) + 1] * at[4]) + (byNight[(3 * row) + 2] * at[5]);
            }
        }
    }

    private void AddCharges(
        ReadOnlySpan<double> tones, ReadOnlySpan<double> inks, ReadOnlySpan<double> shares, Span<double> slope, Span<double> square)
    {
        int n = tones.Length, front = solver.Tones.FrontCount, frontInks = solver.Tones.FrontInks;
        double charge = solver.InkCharge * solver.InkCharge, steep = wall * wall;
        double overFront = Over(inks[..frontInks], solver.Limits.FrontTotal), overBack = Over(inks[frontInks..], solver.Limits.BackTotal);
        for (int i = 0; i < n; i++)
        {
            slope[i] += charge * tones[i];
            square[(i * n) + i] += charge;
            double over = i < front ? overFront : overBack, amount = shares[2 * i] + shares[(2 * i) + 1];
            if (over <= 0)
                continue;
            slope[i] += steep * over * amount;
            for (int j = i < front ? 0 : front; j < (i < front ? front : n); j++)
                square[(i * n) + j] += steep * amount * (shares[2 * j] + shares[(2 * j) + 1]);
        }
    }

    private double Charges(ReadOnlySpan<double> tones, ReadOnlySpan<double> inks)
    {
        double sum = 0;
        foreach (double tone in tones)
            sum += solver.InkCharge * solver.InkCharge * tone * tone;
        double front = wall * Over(inks[..solver.Tones.FrontInks], solver.Limits.FrontTotal);
        double back = wall * Over(inks[solver.Tones.FrontInks..], solver.Limits.BackTotal);
        return sum + (front * front) + (back * back);
    }

    private static double Over(ReadOnlySpan<double> inks, double total)
    {
        double sum = -total;
        foreach (double ink in inks)
            sum += ink;
        return Math.Max(0, sum);
    }

    private void Differences(ReadOnlySpan<double> views, Span<double> difference, Span<double> byDay, Span<double> byNight)
    {
        day.Weigh(new(views[0], views[1], views[2]), solver.Aim.DayWhite, difference[..3], byDay);
        night.Weigh(new(views[3], views[4], views[5]), solver.Aim.NightWhite, difference[3..], byNight);
    }

    // Inks at a bound stay there when the slope pushes outward; the others solve (H + damping) d = −g.
    private bool Step(ReadOnlySpan<double> inks, ReadOnlySpan<double> slope, ReadOnlySpan<double> square, double damping, Span<double> step)
    {
        int n = inks.Length, free = 0;
        Span<int> at = stackalloc int[n];
        for (int i = 0; i < n; i++)
        {
            step[i] = 0;
            bool held = (inks[i] <= 0 && slope[i] > 0) || (inks[i] >= solver.Most[i] && slope[i] < 0);
            if (!held)
                at[free++] = i;
        }

        if (free == 0)
            return false;
        Span<double> lower = stackalloc double[free * free], right = stackalloc double[free];
        for (int i = 0; i < free; i++)
        {
            right[i] = -slope[at[i]];
            for (int j = 0; j <= i; j++)
                lower[(i * free) + j] = square[(at[i] * n) + at[j]];
            lower[(i * free) + i] += damping * (square[(at[i] * n) + at[i]] + 1e-6);
        }

        SolveInPlace(lower, right, free);
        for (int i = 0; i < free; i++)
            step[at[i]] = right[i];
        return true;
    }

    // Cholesky's factors; the matrix is positive by its damping.
    private static void SolveInPlace(Span<double> lower, Span<double> right, int n)
    {
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = lower[(i * n) + j];
                for (int k = 0; k < j; k++)
                    sum -= lower[(i * n) + k] * lower[(j * n) + k];
                lower[(i * n) + j] = i == j ? Math.Sqrt(Math.Max(sum, 1e-300)) : sum / lower[(j * n) + j];
            }

            double value = right[i];
            for (int k = 0; k < i; k++)
                value -= lower[(i * n) + k] * right[k];
            right[i] = value / lower[(i * n) + i];
        }

        for (int i = n - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < n; k++)
                right[i] -= lower[(k * n) + i] * right[k];
            right[i] /= lower[(i * n) + i];
        }
    }

    private static double Dot(ReadOnlySpan<double> one, ReadOnlySpan<double> other)
    {
        double sum = 0;
        for (int i = 0; i < 6; i++)
            sum += one[i] * other[i];
        return sum;
    }

    private static double Squares(ReadOnlySpan<double> difference)
    {
        double sum = 0;
        foreach (double one in difference)
            sum += one * one;
        return sum;
    }
}
