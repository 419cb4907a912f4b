using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;

namespace Laydown.Layout.Patterns;

/// <summary>One layout for several jobs, printed again and again until every job has its copies: as few prints as can be.</summary>
/// <remarks>
/// Prints at which some job needs a copy less on the sheet are the only ones worth trying; halving goes over them, each tried as cutting stock of
/// one sheet in either direction. What is given more than once too often is extra copies. From memory of how gang runs are planned.
/// </remarks>
internal static class GangSheet
{
    private const int LongestTries = 400;
    private const int FirstTries = 6;

    /// <summary>The sheet, its repeats the number of prints; null where not even one copy of each fits together.</summary>
    /// <param name="problem">One stock; copies are prints wanted in all.</param>
    /// <param name="rules">Seed, and how many rounds of ever longer tries.</param>
    /// <param name="better">Told of every layout with fewer prints, one call at a time; null for none.</param>
    /// <param name="stop">Ends the search at the next try; the best so far is given.</param>
    internal static RectSheet? Solve(RectProblem problem, SearchRules rules, Action<RectSheet>? better, CancellationToken stop)
    {
        long[] prints = Worthwhile(problem);
        RectSheet? best = null;
        int bottom = 0, top = prints.Length - 1, tries = FirstTries;
        for (long round = 0; round <= rules.Iterations; round++, tries = Math.Min(LongestTries, tries * 4))
        {
            // Halving may lose what a longer try finds: the next round starts again under the best.
            for ((int low, int high) = (bottom, top); low <= high && !(stop.IsCancellationRequested && best is not null);)
            {
                int middle = (low + high) / 2;
                if (Sheet(problem, prints[middle], rules with { Iterations = tries }, best is null ? CancellationToken.None : stop) is RectSheet sheet)
                {
                    (best, top, high) = (sheet, middle - 1, middle - 1);
                    better?.Invoke(sheet);
                }
                else
                {
                    low = middle + 1;
                }
            }

            if (best is null || top < bottom || stop.IsCancellationRequested || tries == LongestTries)
                break;
        }

        return best;
    }

    /// <summary>Fewest prints that the area allows.</summary>
    internal static long Bound(RectProblem problem) => Worthwhile(problem) is { Length: > 0 } prints ? prints[0] : 0;

    private static long[] Worthwhile(RectProblem problem)
    {
        SortedSet<long> all = [];
        foreach (RectPiece piece in problem.Pieces)
            for (long copies = 1; copies <= Math.Min(piece.Copies, problem.Stocks[0].Area / piece.Area); copies++)
                all.Add((piece.Copies + copies - 1) / copies);
        return [.. all.Where(r => problem.Pieces.Sum(p => OnSheet(p, r) * p.Area) <= problem.Stocks[0].Area)];
    }

    private static long OnSheet(RectPiece piece, long prints) => (piece.Copies + prints - 1) / prints;

    private static RectSheet? Sheet(RectProblem problem, long prints, SearchRules rules, CancellationToken stop)
    {
        RectProblem one = problem with
        {
            Stocks = [problem.Stocks[0] with { Copies = null, Cost = 1 }],
            Pieces = [.. problem.Pieces.Select(p => p with { Copies = (int)OnSheet(p, prints) })],
        };
        foreach (bool upright in new[] { problem.Rules.FirstCutUpright, !problem.Rules.FirstCutUpright })
            if (CutStock.Solve(one with { Rules = problem.Rules with { FirstCutUpright = upright } }, rules, null, stop) is RectLayout layout
                && layout.Sheets.Count == 1 && layout.Sheets[0].Repeats == 1 && layout.Missing.All(m => m == 0))
                return layout.Sheets[0] with { Repeats = (int)prints };
        return null;
    }
}
