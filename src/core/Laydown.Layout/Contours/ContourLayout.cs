using Laydown.Layout.Search;

namespace Laydown.Layout.Contours;

/// <summary>Lays shapes out by their contours, on a strip or on boards and offcuts of any shape.</summary>
public static class ContourLayout
{
    /// <summary>The best layout found.</summary>
    /// <param name="problem">Pieces, gap, and a strip or boards.</param>
    /// <param name="rules">Chance, iterations and workers.</param>
    /// <param name="better">Called with every better layout, one call at a time; null where only the last counts.</param>
    /// <param name="stop">Ends the search; the best so far is returned.</param>
    /// <returns>On a strip the shortest found; on boards the cheapest found, then with the shortest use of the last board.</returns>
    /// <exception cref="ArgumentException">No pieces, an id twice, a gap or margin under 0, a piece without area, both or neither of strip and boards.</exception>
    public static ContourResult Solve(ContourProblem problem, SearchRules rules, Action<ContourResult>? better, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(rules);
        ContourChecks.Check(problem);
        ContourResult first = BoxFill.Fill(problem);
        better?.Invoke(first);
        if (problem.Strip is null || stop.IsCancellationRequested)
            return first;
        ContourJob job = new(problem);
        return new StripSearch(job, [.. Enumerable.Range(0, job.Items)], rules, better, stop).Best();
    }
}
