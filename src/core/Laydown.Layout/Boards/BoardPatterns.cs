using Laydown.Layout.Patterns;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Boards;

/// <summary>Many copies of few pieces: patterns repeated, beside the search that lays every copy by itself.</summary>
internal static class BoardPatterns
{
    /// <summary>Mean copies of a piece from which patterns are sought (common practice, no source).</summary>
    private const int ManyCopies = 8;

    /// <summary>Most tries in each direction of the first cuts, and steps of the other search that count as much as one.</summary>
    private const int MostTries = 200, StepsOfTry = 200;

    /// <summary>Most pieces that differ, and most copies that the other search is asked for beside patterns.</summary>
    private const int MostPieces = 400, MostSingle = 20_000;

    /// <summary>Whether patterns are worth seeking: enough copies, bare sheets, and at least two stages of cuts.</summary>
    internal static bool Suit(BoardFrame frame) =>
        frame.Started.All(s => s is null) && frame.Problem.Pieces.Count <= MostPieces && Copies(frame.Problem) > (long)ManyCopies * frame.Problem.Pieces.Count
        && (frame.Rules.MostStages != 1 || frame.Rules.Process is CutProcess.Free) && frame.Problem.Stocks.Any(s => s.KeepOuts.Count == 0 && s.Copies is not 0);

    /// <summary>Whether the search that lays every copy by itself is to be asked, too.</summary>
    internal static bool TreeToo(BoardFrame frame) => Copies(frame.Problem) <= MostSingle;

    /// <summary>Offers what is found, first answers before all.</summary>
    internal static void Offer(BoardFrame frame, SearchRules search, BoardBest best, CancellationToken stop)
    {
        RectProblem[] problems = [.. Directions(frame.Problem)];
        foreach (RectProblem problem in problems)
            best.Offer(CutStock.Solve(problem, search with { Iterations = 0 }, null, stop));
        long tries = Math.Min(MostTries, (search.Iterations / StepsOfTry) + (search.Iterations > 0 ? 1 : 0));
        foreach (RectProblem problem in problems)
            if (tries > 0 && !best.IsProven && !stop.IsCancellationRequested)
                best.Offer(CutStock.Solve(problem, search with { Iterations = tries }, best.Offer, stop));
    }

    // Where stages are not limited the first cuts may go either way.
    private static IEnumerable<RectProblem> Directions(RectProblem problem)
    {
        RectRules rules = problem.Rules;
        bool limited = rules is { Process: CutProcess.Guillotine, MostStages: > 0 };
        yield return limited ? problem : problem with { Rules = rules with { MostStages = 0 } };
        if (!limited)
            yield return problem with { Rules = rules with { MostStages = 0, FirstCutUpright = !rules.FirstCutUpright } };
    }

    private static long Copies(RectProblem problem) => problem.Pieces.Sum(p => (long)p.Copies);
}
