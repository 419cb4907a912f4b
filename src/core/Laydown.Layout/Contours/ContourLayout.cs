using Laydown.Layout.Search;

namespace Laydown.Layout.Contours;

/// <summary>Lays shapes out by their contours, on a strip or on boards and offcuts of any shape.</summary>
/// <remarks>
/// Whole at once as columns of boxes, then better while one looks: forms that overlap are moved apart while the room shrinks
/// [Gardeyn2025], [Voudouris1999]. Over 3000 copies only the columns of boxes are given.
/// </remarks>
public static class ContourLayout
{
    private const int MostSearched = 3000;

    /// <summary>The best layout found.</summary>
    /// <param name="problem">Pieces, gap, and a strip or boards.</param>
    /// <param name="rules">Chance, iterations and workers.</param>
    /// <param name="better">Called with every better layout, one call at a time; null where only the last counts.</param>
    /// <param name="stop">Ends the search; the best so far is returned.</param>
    /// <returns>On a strip the shortest found; on boards the cheapest found, then with the shortest use of the last board.</returns>
    /// <exception cref="ArgumentException">No pieces, an id twice, a gap or margin under 0, a piece without area, both or neither of strip and boards, pieces of a direction without a common angle.</exception>
    public static ContourResult Solve(ContourProblem problem, SearchRules rules, Action<ContourResult>? better, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(rules);
        ContourChecks.Check(problem);
        ContourProblem settled = problem.Pieces.Any(p => p.Direction is not null) ? Directions.Settled(problem, stop) : problem;
        BestKept kept = new(better);
        if (BoxFill.Takes(settled))
            kept.Offer(BoxFill.Fill(settled));
        if (!BoxFill.Takes(settled) || (settled.Pieces.Sum(p => (long)p.Copies) <= MostSearched && !stop.IsCancellationRequested))
            kept.Offer(Searched(settled, rules, kept.Offer, stop));
        return kept.Best!;
    }

    internal static ContourResult Searched(ContourProblem problem, SearchRules rules, Action<ContourResult>? better, CancellationToken stop)
    {
        ContourJob job = new(problem);
        return problem.Strip is null ? new BoardSearch(job, rules, better, stop).Best() : new StripSearch(job, rules, better, stop).Best();
    }
}
