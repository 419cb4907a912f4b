using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>How the shop makes a price of a cost.</summary>
/// <param name="RoundToCents">Each line of a quote is rounded to a multiple of so many cents; 1 or more.</param>
/// <param name="RoundUp">Whether lines are rounded up; else to the nearest, halves up.</param>
/// <param name="TaxEachLine">Whether tax is rounded to the cent on each line; else once on the sum.</param>
/// <param name="SmallestNet">Least net sum of a quote: what is missing is charged as a line of its own; null for none.</param>
/// <param name="OffcutCreditPercent">What a usable offcut is worth, percent of its share of the sheet's price, 0 to 100.</param>
/// <param name="UseLearntTimes">Whether times of plans and quotes are corrected by what the log says.</param>
public sealed record QuotePolicy(
    int RoundToCents = 1,
    bool RoundUp = false,
    bool TaxEachLine = false,
    Money? SmallestNet = null,
    double OffcutCreditPercent = 0,
    bool UseLearntTimes = false)
{
    /// <summary>A price rounded as the policy says; nothing stays nothing.</summary>
    /// <exception cref="InvalidOperationException">The policy rounds to less than a cent.</exception>
    public Money Rounded(Money price)
    {
        if (RoundToCents < 1)
            throw new InvalidOperationException(Invariant($"Rounding to {RoundToCents} cents: wanted 1 or more."));
        long over = ((price.Cents % RoundToCents) + RoundToCents) % RoundToCents;
        if (over == 0)
            return price;
        bool up = RoundUp || 2 * over >= RoundToCents;
        return new(price.Cents - over + (up ? RoundToCents : 0));
    }
}
