using Laydown.Layout.Patterns;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Boards;

/// <summary>One layout for the whole run, on the stock on which it costs least.</summary>
internal static class OneForAll
{
    private const int MostRounds = 3;

    /// <summary>The layout; all copies are missing where no stock holds one copy of each piece, or there are too few of it.</summary>
    internal static RectLayout Solve(RectProblem problem, SearchRules search, Action<RectLayout>? better, CancellationToken stop)
    {
        RectLayout best = new([], [.. problem.Pieces.Select(p => p.Copies)]);
        double least = double.MaxValue;
        SearchRules rules = search with { Iterations = Math.Min(MostRounds, search.Iterations) };
        for (int s = 0; s < problem.Stocks.Count; s++)
        {
            RectStock stock = problem.Stocks[s];
            if (stock.KeepOuts.Count > 0 || stock.Copies is 0 || problem.Rules is { Process: CutProcess.Guillotine, MostStages: 1 })
                continue;
            RectRules cut = problem.Rules.Process is CutProcess.Free ? problem.Rules with { MostStages = 0 } : problem.Rules;
            int at = s;
            void Take(RectSheet sheet)
            {
                if (sheet.Repeats > (stock.Copies ?? int.MaxValue) || sheet.Repeats * stock.Cost >= least)
                    return;
                least = sheet.Repeats * stock.Cost;
                best = new([sheet with { Stock = at }], [.. problem.Pieces.Select(_ => 0)]);
                better?.Invoke(best);
            }

            if (GangSheet.Solve(problem with { Stocks = [stock], Rules = cut }, rules, Take, stop) is { } last)
                Take(last);
        }

        return best;
    }
}
