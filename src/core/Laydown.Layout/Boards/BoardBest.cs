using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Boards;

/// <summary>The better of what several searches find: nothing missing first, then cost, then sets kept together, then few different layouts, then large offcuts.</summary>
internal sealed class BoardBest(RectProblem problem, Action<RectLayout>? better)
{
    private const double Rounding = 1e-9;

    private readonly record struct Score(double Missing, double Cost, int Apart, int Layouts, double Offcuts);

    private Score best;

    /// <summary>The best so far; null before the first.</summary>
    internal RectLayout? Layout { get; private set; }

    /// <summary>Whether every copy has a place.</summary>
    internal bool IsWhole => Layout is not null && best.Missing == 0;

    /// <summary>Whether no layout can cost less: it costs what its area alone asks for on the sheets that are cheapest by area.</summary>
    internal bool IsProven => IsWhole && best.Apart == 0 && best.Layouts == 1 && best.Cost <= Bound() * (1 + Rounding);

    internal void Offer(RectLayout layout)
    {
        Score score = ScoreOf(layout);
        if (Layout is not null && !IsBetter(score, best))
            return;
        (Layout, best) = (layout, score);
        better?.Invoke(layout);
    }

    private static bool IsBetter(Score one, Score other) =>
        one.Missing != other.Missing ? one.Missing < other.Missing
        : Math.Abs(one.Cost - other.Cost) > Rounding * Math.Abs(other.Cost) ? one.Cost < other.Cost
        : one.Apart != other.Apart ? one.Apart < other.Apart
        : one.Layouts != other.Layouts ? one.Layouts < other.Layouts : one.Offcuts > other.Offcuts;

    private Score ScoreOf(RectLayout layout)
    {
        double missing = 0;
        for (int p = 0; p < problem.Pieces.Count; p++)
            missing += (double)problem.Pieces[p].Area * layout.Missing[p];
        return new(
            missing, layout.Sheets.Sum(s => s.Repeats * problem.Stocks[s.Stock].Cost), Apart(layout), BoardWriter.Merged(layout.Sheets).Count(),
            layout.Sheets.SelectMany(s => s.Offcuts).Select(o => (double)o.Area).DefaultIfEmpty(0).Max());
    }

    // Over all sets: boards that carry pieces of it, less one.
    private int Apart(RectLayout layout)
    {
        int[] boards = new int[problem.Pieces.Count];
        foreach (RectSheet sheet in layout.Sheets)
            foreach (int group in sheet.Spots.Select(s => problem.Pieces[s.Piece].Group).Where(g => g >= 0).Distinct())
                boards[group] += sheet.Repeats;
        return boards.Sum(b => Math.Max(0, b - 1));
    }

    private double Bound()
    {
        double area = problem.Pieces.Sum(p => (double)p.Area * p.Copies);
        return problem.Stocks is [{ Cost: var cost } only] ? Math.Ceiling((area / only.Area) - Rounding) * cost : area * problem.Stocks.Min(s => s.Cost / s.Area);
    }
}
