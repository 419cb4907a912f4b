using Laydown.Layout.Search;

namespace Laydown.Layout.Contours;

/// <summary>Lays shapes out by their contours, on a strip or on boards and offcuts of any shape.</summary>
/// <remarks>
/// Whole at once as columns of boxes, then better while one looks: forms that overlap are moved apart while the room shrinks
/// [Gardeyn2025], [Voudouris1999]. Over 3000 copies one board, or a stretch of strip, is filled and comes again and again; only the rest is searched.
/// </remarks>
public static class ContourLayout
{
    /// <summary>Copies up to which all of them are searched at once.</summary>
    internal const int MostSearched = 3000;

    /// <summary>Copies, and copies of each piece, above which boards that come again and again are tried first, and the most iterations for them.</summary>
    private const int FewCopies = 300, AlikeCopies = 20, MostOfRepeated = 2000;

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
        long copies = settled.Pieces.Sum(p => (long)p.Copies);
        if (copies > MostSearched)
        {
            Repeated(settled, rules, kept, stop);
            return kept.Best!;
        }

        // Some hundreds of few pieces: boards that come again and again are a good beginning, and all there is at once.
        bool alike = settled.Strip is null && copies > FewCopies && copies > AlikeCopies * settled.Pieces.Count;
        if (alike)
            Repeated(settled, rules with { Iterations = Math.Min(MostOfRepeated, rules.Iterations / 2) }, kept, stop);
        if (kept.Best is null || (!stop.IsCancellationRequested && !(alike && rules.Iterations == 0)))
            kept.Offer(Searched(settled, rules, kept.Offer, stop));
        return kept.Best!;
    }

    // At once as it comes, then with boards filled better.
    private static void Repeated(ContourProblem problem, SearchRules rules, BestKept kept, CancellationToken stop)
    {
        RepeatedBoards? boards = problem.Strip is null ? new(problem, MostSearched, stop) : null;
        foreach (long iterations in new[] { 0, rules.Iterations }.Distinct())
        {
            if (kept.Best is not null && stop.IsCancellationRequested)
                return;
            SearchRules now = rules with { Iterations = iterations };
            kept.Offer(boards?.Best(now) ?? RepeatedStrip.Solve(problem, now, stop));
        }
    }

    internal static ContourResult Searched(ContourProblem problem, SearchRules rules, Action<ContourResult>? better, CancellationToken stop)
    {
        ContourJob job = new(problem);
        return problem.Strip is null ? new BoardSearch(job, rules, better, stop).Best() : new StripSearch(job, rules, better, stop).Best();
    }
}
