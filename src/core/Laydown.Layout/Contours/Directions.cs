using Laydown.Layout.Search;

namespace Laydown.Layout.Contours;

/// <summary>Settles the one angle of all pieces that name the same direction: the one whose first layout is best.</summary>
internal static class Directions
{
    private const int MostTried = 8;

    /// <summary>The problem with one angle for each piece of a direction.</summary>
    /// <exception cref="ArgumentException">Pieces of a direction have no angle in common.</exception>
    internal static ContourProblem Settled(ContourProblem problem, CancellationToken stop)
    {
        foreach (string direction in problem.Pieces.Select(p => p.Direction).OfType<string>().Distinct())
        {
            double[] common = [.. problem.Pieces.Where(p => p.Direction == direction).Select(p => p.Angles.Degrees.AsEnumerable()).Aggregate((a, b) => a.Intersect(b)).Order()];
            if (common.Length == 0)
                throw new ArgumentException($"Direction {direction}: its pieces have no angle in common; wanted one at least.", nameof(problem));
            int step = (common.Length + MostTried - 1) / MostTried;
            problem = common.Where((_, i) => i % step == 0).Select(angle => At(problem, direction, angle)).MinBy(p => First(p, stop))!;
        }

        return problem;
    }

    private static ContourProblem At(ContourProblem problem, string direction, double angle) =>
        problem with { Pieces = [.. problem.Pieces.Select(p => p.Direction == direction ? p with { Angles = ContourAngles.Of(angle) } : p)] };

    private static (int, double, double) First(ContourProblem problem, CancellationToken stop) =>
        BestKept.Rank(ContourLayout.Searched(problem, new SearchRules(Iterations: 0), null, stop));
}
