using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;

namespace Laydown.Layout.Guillotine;

/// <summary>Lays rectangles out on sheets of several sizes that are cut from edge to edge, at the least cost.</summary>
internal static class GuillotineSearch
{
    /// <summary>Steps to fill a sheet that was made smaller.</summary>
    private const int PushSteps = 200;

    /// <summary>The cheapest layout found, offcuts worth money counted; of equal cost fewest different sheets, then groups together, then the largest offcuts.</summary>
    /// <remarks>Strips of the first stage are never narrower than their least width.
    /// Pieces that no sheet is left for are missing in it. Ends by itself where the cost is proven least and no offcut grows any more.</remarks>
    /// <param name="problem">What to lay out.</param>
    /// <param name="rules">Seed, iterations, workers.</param>
    /// <param name="better">Told of every better layout, one call at a time.</param>
    /// <param name="stop">Ends the search at the next border of an iteration; the best layout so far is given.</param>
    /// <exception cref="ArgumentException">A size, a number of copies or a cost is out of range; the message names it.</exception>
    internal static RectLayout Solve(RectProblem problem, SearchRules rules, Action<RectLayout>? better, CancellationToken stop)
    {
        ProblemChecks.Refuse(problem);
        RectLayout found = Search(problem, rules, better, stop);
        if (rules.Iterations == 0)
            return found;

        RectLayout pushed = EdgeRest.Pushed(problem, found, one => Fill(one, rules.Seed));
        if (!ReferenceEquals(pushed, found))
            better?.Invoke(pushed);
        return pushed;
    }

    private static RectLayout Search(RectProblem problem, SearchRules rules, Action<RectLayout>? better, CancellationToken stop)
    {
        if (!PatternPeel.Wanted(problem))
            return Run(problem, rules, better, stop);

        // High quantities: repeated sheets first, the search takes what is left.
        (IReadOnlyList<RectSheet> repeated, RectProblem rest) = PatternPeel.Of(problem, rules.Seed, stop);
        RectLayout Whole(RectLayout part) => part with { Sheets = [.. repeated, .. part.Sheets] };
        return Whole(Run(rest, rules, l => better?.Invoke(Whole(l)), stop));
    }

    private static RectLayout Run(RectProblem problem, SearchRules rules, Action<RectLayout>? better, CancellationToken stop) =>
        (CutWindows.Wanted(problem) ? CutWindows.Best(problem, rules, better, stop) : null)
        ?? new GuillotineRun(new CutJob(problem, rules.Seed), rules, better, stop).Best();

    private static RectLayout Fill(RectProblem one, int seed)
    {
        CutJob job = new(one, seed);
        CutWalk walk = new(job, seed);
        walk.Start();
        walk.Go(long.MaxValue, PushSteps, CancellationToken.None);
        return CutWriter.Write(walk.Best, job);
    }
}
