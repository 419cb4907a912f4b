using Laydown.Layout.Jobs;
using Laydown.Layout.Search;

namespace Laydown.Shop.Layout;

/// <summary>Lays a job out and judges the result before anyone sees it.</summary>
public static class LayOutJob
{
    /// <summary>The best layout found until the search ended or was stopped.</summary>
    /// <param name="job">A sound job.</param>
    /// <param name="rules">Chance, iterations, workers.</param>
    /// <param name="better">Told every better layout, one call at a time; may be null.</param>
    /// <param name="stop">Ends the search; the best so far is given.</param>
    /// <exception cref="InvalidOperationException">The layout breaks a rule of its own job: a fault of the program.</exception>
    public static JobLayout Solve(LayoutJob job, SearchRules rules, Action<JobLayout>? better, CancellationToken stop)
    {
        JobLayout layout = JobSolver.Solve(job, rules, better, stop);
        return JobChecks.Faults(layout) is { Count: > 0 } faults
            ? throw new InvalidOperationException(Invariant($"The layout breaks its own rules, so it is not given out: {faults[0].Field}: found {faults[0].Found}; wanted {faults[0].Wanted}."))
            : layout;
    }
}
