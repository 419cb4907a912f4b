using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>Shares an amount so that the parts add up to it exactly.</summary>
public static class Shares
{
    /// <summary>Parts in proportion to the weights, whole cents, by largest remainder; equal remainders go to the earlier part.</summary>
    /// <param name="total">What is shared; may be negative.</param>
    /// <param name="weights">One weight for each part, none negative; at least one part. When all are 0 the parts are as equal as can be.</param>
    /// <exception cref="ArgumentException">No part, or a negative weight.</exception>
    public static IReadOnlyList<Money> Of(Money total, IReadOnlyList<decimal> weights)
    {
        Bounds.NotEmpty(weights);
        if (weights.Any(w => w < 0))
            throw new ArgumentException("A weight is negative; wanted 0 or more.", nameof(weights));

        decimal sum = weights.Sum();
        decimal[] exact = [.. weights.Select(w => sum == 0 ? (decimal)total.Cents / weights.Count : total.Cents * (w / sum))];
        long[] parts = [.. exact.Select(e => (long)Math.Floor(e))];

        // What rounding down left over goes to the largest remainders, one cent each.
        long left = total.Cents - parts.Sum();
        foreach (int i in Enumerable.Range(0, parts.Length).OrderByDescending(i => exact[i] - parts[i]).ThenBy(i => i).Take((int)left))
            parts[i]++;
        return [.. parts.Select(p => new Money(p))];
    }
}
