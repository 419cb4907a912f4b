using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>Overhead over a time: what runs carried against what was really spent.</summary>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="Runs">Runs that count.</param>
/// <param name="Lines">Each kind of overhead.</param>
/// <param name="Applied">All that runs carried.</param>
/// <param name="Spent">All that was spent.</param>
/// <param name="Over">Applied less spent: over 0 over-applied, under 0 under-applied.</param>
/// <param name="CostOfWork">Cost of the runs with the overhead they carried.</param>
/// <param name="CostAdjusted">The same with the overhead that was really spent.</param>
/// <param name="Price">What the runs were priced at, without tax.</param>
/// <param name="Words">What it comes to, in a sentence.</param>
public sealed record OverheadReview(
    DateOnly From, DateOnly To, int Runs, IReadOnlyList<OverheadBalance> Lines, Money Applied, Money Spent, Money Over, Money CostOfWork, Money CostAdjusted, Money Price, string Words)
{
    /// <summary>What was left of the prices when overhead is counted as spent.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public Money Left => Price - CostAdjusted;
}
