using Laydown.Measures;

namespace Laydown.Plan.Log;

/// <summary>Causes of remakes by what they cost, dearest first: few causes make most of the cost. [Juran1951], from memory.</summary>
public static class CauseShares
{
    /// <summary>The causes that occur. Where nothing cost anything, shares are by times.</summary>
    public static IReadOnlyList<CauseShare> Of(IEnumerable<RemakeNote> remakes)
    {
        var causes = remakes.GroupBy(r => r.Cause)
            .Select(g => (Cause: g.Key, Times: g.Count(), Pieces: g.Sum(r => r.Pieces), Cost: Money.Sum(g.Select(r => r.Cost))))
            .OrderByDescending(c => c.Cost.Cents).ThenByDescending(c => c.Times).ThenBy(c => c.Cause).ToList();
        bool byCost = causes.Any(c => c.Cost.Cents > 0);
        double all = causes.Sum(c => Weight(c.Cost, c.Times)), sum = 0;
        List<CauseShare> shares = [];
        foreach (var cause in causes)
        {
            sum += Weight(cause.Cost, cause.Times);
            shares.Add(new(cause.Cause, cause.Times, cause.Pieces, cause.Cost, 100 * Weight(cause.Cost, cause.Times) / all, 100 * sum / all));
        }

        return shares;

        double Weight(Money cost, int times) => byCost ? cost.Cents : times;
    }
}
