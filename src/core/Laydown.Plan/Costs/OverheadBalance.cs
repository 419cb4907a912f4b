using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>One kind of overhead over a time: what runs carried of it against what was spent.</summary>
/// <param name="Name">The kind.</param>
/// <param name="On">What it is spread on; null where runs carried none of that name.</param>
/// <param name="Quantity">How much of that the runs had: money units or h.</param>
/// <param name="Applied">What the prices of the runs carried.</param>
/// <param name="Spent">What was spent.</param>
/// <param name="Over">Applied less spent: over 0 over-applied, under 0 under-applied.</param>
/// <param name="PerUnitNeeded">Rate at which the same runs would have carried what was spent; null without runs.</param>
/// <param name="Budget">What was to be expected for these days and this much work; null where the shop sets no budget.</param>
/// <param name="BySpending">Part of <paramref name="Over"/> that comes from spending less than budgeted; null without a budget.</param>
/// <param name="ByVolume">Part that comes from more work than budgeted; with <paramref name="BySpending"/> it adds up to <paramref name="Over"/>. Null without a budget.</param>
/// <param name="Because">In words.</param>
public sealed record OverheadBalance(
    string Name, OverheadBase? On, decimal Quantity, Money Applied, Money Spent, Money Over, decimal? PerUnitNeeded, Money? Budget, Money? BySpending, Money? ByVolume, string Because);
