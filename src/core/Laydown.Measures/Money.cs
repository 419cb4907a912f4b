namespace Laydown.Measures;

/// <summary>An amount of money in minor units (cents) of the shop's one currency.</summary>
/// <param name="Cents">Amount in cents; negative is a credit.</param>
/// <remarks>Whole cents only, so that the lines of a quote add up. <c>default</c> is nothing.</remarks>
public readonly record struct Money(long Cents) : IComparable<Money>
{
    /// <summary>The amount in whole units.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public decimal Units => Cents / 100m;

    /// <summary>The nearest cent to <paramref name="units"/>, halves away from zero.</summary>
    public static Money FromUnits(decimal units) => new((long)Math.Round(units * 100m, 0, MidpointRounding.AwayFromZero));

    /// <summary>The nearest cent to <paramref name="units"/>, halves away from zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or over 10¹² units.</exception>
    public static Money FromUnits(double units) => FromUnits((decimal)Bounds.Within(units, -1e12, 1e12));

    /// <summary>The sum of all.</summary>
    public static Money Sum(IEnumerable<Money> parts) => new(parts.Sum(p => p.Cents));

    /// <summary>Adds two amounts.</summary>
    public static Money operator +(Money one, Money other) => new(checked(one.Cents + other.Cents));

    /// <summary>Takes one amount from the other.</summary>
    public static Money operator -(Money one, Money other) => new(checked(one.Cents - other.Cents));

    /// <summary>Whether one amount is less than the other.</summary>
    public static bool operator <(Money one, Money other) => one.Cents < other.Cents;

    /// <summary>Whether one amount is more than the other.</summary>
    public static bool operator >(Money one, Money other) => one.Cents > other.Cents;

    /// <summary>Whether one amount is at most the other.</summary>
    public static bool operator <=(Money one, Money other) => one.Cents <= other.Cents;

    /// <summary>Whether one amount is at least the other.</summary>
    public static bool operator >=(Money one, Money other) => one.Cents >= other.Cents;

    /// <inheritdoc/>
    public int CompareTo(Money other) => Cents.CompareTo(other.Cents);

    /// <summary>Such as <c>1234.50</c>.</summary>
    public override string ToString() => Invariant($"{Units:0.00}");
}
