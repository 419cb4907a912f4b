using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Guillotine;

/// <summary>Refuses problems that make no sense, by name.</summary>
internal static class ProblemChecks
{
    /// <summary>Longest side: two of them still add up to a whole number of 32 bits.</summary>
    private const int MostSide = 1_000_000_000;

    /// <exception cref="ArgumentException">A size, a number of copies or a cost is out of range.</exception>
    internal static void Refuse(RectProblem problem)
    {
        if (problem.Stocks.Count == 0)
            throw new ArgumentException("Stocks: found none; wanted at least one.", nameof(problem));
        Strips(problem);
        foreach (RectStock s in problem.Stocks)
        {
            Side(s.Width, s.Id);
            Side(s.Height, s.Id);
            if (s.Copies < 0)
                throw new ArgumentException(Invariant($"{s.Id}: found {s.Copies} copies; wanted 0 or more, or no limit."), nameof(problem));
            if (!(s.Cost >= 0 && s.Cost <= 1e12))
                throw new ArgumentException(Invariant($"{s.Id}: found a cost of {s.Cost}; wanted 0 to 1e12."), nameof(problem));
        }

        foreach (RectPiece p in problem.Pieces)
        {
            Side(p.Width, p.Id);
            Side(p.Height, p.Id);
            if (p.Copies < 1)
                throw new ArgumentException(Invariant($"{p.Id}: found {p.Copies} copies; wanted at least 1."), nameof(problem));
        }
    }

    private static void Strips(RectProblem problem)
    {
        RectRules rules = problem.Rules;
        if (rules.LeastStrip is < 0 or > MostSide)
            throw new ArgumentException(Invariant($"Least strip: found {rules.LeastStrip}; wanted 0 to {MostSide}."), nameof(problem));
        if (rules.MostStrip != 0)
            throw new ArgumentException(Invariant($"Greatest strip: found {rules.MostStrip}; wanted 0, this search knows no such limit."), nameof(problem));
        if (rules.LeastStrip > 0 && problem.Stocks.FirstOrDefault(s => s.KeepOuts.Count > 0) is RectStock kept)
            throw new ArgumentException(
                Invariant($"{kept.Id}: found places kept out beside a least strip of {rules.LeastStrip}; wanted one of the two."), nameof(problem));
    }

    private static void Side(int side, string id)
    {
        if (side is < 1 or > MostSide)
            throw new ArgumentException(Invariant($"{id}: found a side of {side}; wanted 1 to {MostSide}."), nameof(id));
    }
}
