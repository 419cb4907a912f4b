using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>Puts overhead on runs by the shop's rates: by kind where the shop tells kinds, else as percent of cost.</summary>
public static class Overheads
{
    /// <summary>Name of the one overhead of a shop that tells no kinds.</summary>
    public const string Whole = "overhead";

    /// <summary>Names of the shop's kinds of overhead.</summary>
    public static IReadOnlyList<string> Names(ShopRates rates) => rates.Overheads is { Count: > 0 } kinds ? [.. kinds.Select(k => k.Name)] : [Whole];

    /// <summary>A line for each kind.</summary>
    /// <param name="rates">The shop's rates.</param>
    /// <param name="bases">What the run has.</param>
    public static IReadOnlyList<OverheadLine> On(ShopRates rates, OverheadBases bases)
    {
        if (rates.Overheads is { Count: > 0 } kinds)
            return [.. kinds.Select(k => Line(k.Name, k.On, k.PerUnit, bases))];
        return [Line(Whole, OverheadBase.Cost, (decimal)rates.OverheadPercent / 100m, bases)];
    }

    /// <summary>What overhead is spread on, in words.</summary>
    public static string Words(OverheadBase on) => on switch
    {
        OverheadBase.Labour => "labour",
        OverheadBase.PressHours => "press hours",
        OverheadBase.LabourHours => "hours of people",
        _ => "cost",
    };

    /// <summary>Whether it is spread on money; else on hours.</summary>
    public static bool IsMoney(OverheadBase on) => on is OverheadBase.Cost or OverheadBase.Labour;

    /// <summary>A rate as people say it: percent of money, or money for each hour.</summary>
    public static string Rate(OverheadBase on, decimal perUnit) => IsMoney(on) ? Invariant($"{100 * perUnit:0.##} %") : Invariant($"{perUnit:0.00}/h");

    private static OverheadLine Line(string name, OverheadBase on, decimal perUnit, OverheadBases bases)
    {
        decimal quantity = bases.Of(on);
        string because = IsMoney(on)
            ? Invariant($"{Rate(on, perUnit)} of {Words(on)} {quantity:0.00}")
            : Invariant($"{60 * quantity:0.0} min of {Words(on)} × {Rate(on, perUnit)}");
        return new(name, on, quantity, perUnit, Money.FromUnits(quantity * perUnit), because);
    }
}
