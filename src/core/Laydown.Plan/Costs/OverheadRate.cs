using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>One kind of overhead, set for a year ahead: what it will cost and what it is spread on. [PrintingJobCase] [TwoRateCase]</summary>
/// <param name="Name">Its name, such as <c>rent and energy</c>; each once in a shop.</param>
/// <param name="On">What it is spread on.</param>
/// <param name="PerYear">What it is expected to cost in a year, 0 or more.</param>
/// <param name="BasePerYear">How much of <paramref name="On"/> is expected in a year: money or hours, over 0.</param>
/// <param name="VariablePerUnit">What each unit of <paramref name="On"/> costs beside that, such as energy for each hour; null for nothing.</param>
public sealed record OverheadRate(string Name, OverheadBase On, Money PerYear, decimal BasePerYear, Money? VariablePerUnit = null)
{
    /// <summary>Overhead for each unit of <see cref="On"/>: money for each hour, or for each unit of money.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public decimal PerUnit => Rates.PerHour(PerYear.Units, BasePerYear, VariablePerUnit?.Units ?? 0);
}
