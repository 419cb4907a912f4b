namespace Laydown.Layout.Patterns;

/// <summary>A plan on a stock.</summary>
/// <param name="Stock">Index of the stock.</param>
/// <param name="Cost">What the stock costs.</param>
/// <param name="Upright">Whether the first cuts go upright.</param>
/// <param name="Plan">The plan.</param>
internal sealed record CutPattern(int Stock, double Cost, bool Upright, CutPlan Plan)
{
    internal int[] Counts => Plan.Counts;
}
