using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>Rates and mark-ups as they are reckoned in costing.</summary>
public static class Rates
{
    /// <summary>Rate for one hour: a year's cost over the hours it is spread on, plus what each hour costs by itself.</summary>
    /// <param name="costPerYear">Cost to be spread, in money units.</param>
    /// <param name="hoursPerYear">Hours, over 0.</param>
    /// <param name="variablePerHour">Cost of each hour by itself.</param>
    public static decimal PerHour(decimal costPerYear, decimal hoursPerYear, decimal variablePerHour = 0) =>
        hoursPerYear > 0
            ? (costPerYear / hoursPerYear) + variablePerHour
            : throw new ArgumentOutOfRangeException(nameof(hoursPerYear), hoursPerYear, "Hours: wanted over 0.");

    /// <summary>Rate for one hour of a machine written off in a straight line: (price − rest) / years / hours.</summary>
    public static decimal StraightLinePerHour(decimal price, decimal restValue, decimal years, decimal hoursPerYear) =>
        years > 0 ? PerHour((price - restValue) / years, hoursPerYear) : throw new ArgumentOutOfRangeException(nameof(years), years, "Years: wanted over 0.");

    /// <summary>Price at which <paramref name="marginPercent"/> of it is margin: cost / (1 − m).</summary>
    /// <param name="cost">Cost with overhead.</param>
    /// <param name="marginPercent">Margin on the price, percent, 0 to under 100.</param>
    public static Money PriceWithMargin(Money cost, double marginPercent) =>
        marginPercent is >= 0 and < 100
            ? Money.FromUnits(cost.Units / (1 - ((decimal)marginPercent / 100)))
            : throw new ArgumentOutOfRangeException(nameof(marginPercent), marginPercent, "Margin: wanted 0 % to under 100 %.");

    /// <summary>Area of roll a piece consumes and what of it is waste: the whole width is charged.</summary>
    /// <param name="rollWidthMm">Width of the roll.</param>
    /// <param name="pieceWidthMm">Width of the piece across the roll, at most the roll's.</param>
    /// <param name="lengthMm">Length along the roll.</param>
    public static (double ConsumedM2, double WasteM2) RollConsumed(double rollWidthMm, double pieceWidthMm, double lengthMm)
    {
        double consumed = Bounds.Within(rollWidthMm, 0, 1e6) * Bounds.Within(lengthMm, 0, 1e8) / 1e6;
        return (consumed, consumed - (Bounds.Within(pieceWidthMm, 0, rollWidthMm) * lengthMm / 1e6));
    }
}
