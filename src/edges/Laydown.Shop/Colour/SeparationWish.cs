using Laydown.Colour.Inversion;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;

namespace Laydown.Shop.Colour;

/// <summary>Limits and black of a separation, as a person asks for them.</summary>
/// <param name="TotalPercent">Largest sum of inks, percent of one full ink; null as the print condition says, or without one 100 for each ink, at most 400.</param>
/// <param name="LimitsPercent">Most of each ink in the model's order, percent; null as the print condition says, or without one 100.</param>
/// <param name="Black">How much black.</param>
/// <param name="BlackStartL">L* under which black starts; null as usual for the amount.</param>
/// <param name="BlackWidthL">Over how much L* it rises; null as usual for the amount.</param>
public sealed record SeparationWish(
    double? TotalPercent, IReadOnlyList<double>? LimitsPercent, BlackAmount Black, double? BlackStartL, double? BlackWidthL)
{
    private const double UsualTotalPercent = 400;

    /// <summary>As the condition says, medium black.</summary>
    public static SeparationWish Usual { get; } = new(null, null, BlackAmount.Medium, null, null);

    /// <summary>A wish with the limits of a condition where none were asked for.</summary>
    public static SeparationWish OfCondition(SeparationWish wish, PrintCondition condition, PrintModel print) => wish with
    {
        TotalPercent = wish.TotalPercent ?? condition.TotalLimitPercent,
        LimitsPercent = wish.LimitsPercent ?? [.. print.InkNames.Select(n => condition.Inks.FirstOrDefault(i => i.Role == InkRoleNames.Find(n))?.LimitPercent ?? 100)],
    };

    /// <summary>The policy behind the words.</summary>
    public BlackPolicy Policy()
    {
        BlackPolicy usual = Black switch
        {
            BlackAmount.Least => BlackPolicy.Least,
            BlackAmount.Medium => BlackPolicy.Medium,
            _ => BlackPolicy.Greatest,
        };
        return usual with { StartLightness = BlackStartL ?? usual.StartLightness, WidthLightness = BlackWidthL ?? usual.WidthLightness };
    }

    /// <summary>The limits for so many inks, or what is wrong with the numbers asked for.</summary>
    /// <param name="inkNames">Inks of the model.</param>
    public Reading<InkLimits> Limits(IReadOnlyList<string> inkNames)
    {
        double[] each = [.. LimitsPercent ?? [.. inkNames.Select(_ => 100.0)]];
        double total = TotalPercent ?? Math.Min(UsualTotalPercent, 100.0 * inkNames.Count);
        if (each.Length != inkNames.Count)
            return Refused("limits", Invariant($"{each.Length} limits"), Invariant($"{inkNames.Count}, one for each of {string.Join(", ", inkNames)}"));
        if (Array.Find(each, l => !(l is > 0 and <= 100)) is var wrong && each.Any(l => !(l is > 0 and <= 100)))
            return Refused("limits", Invariant($"{wrong} %"), "over 0 % to 100 % for each ink");
        if (!(total >= each.Max() && total <= 1000))
            return Refused("total", Invariant($"{total} %"), Invariant($"{each.Max()} %, the largest limit of one ink, to 1000 %"));
        if (BlackStartL is not (null or (> 0 and <= 100)))
            return Refused("black start", Invariant($"L* {BlackStartL}"), "L* over 0 to 100");
        if (BlackWidthL is not (null or (> 0 and <= 100)))
            return Refused("black width", Invariant($"{BlackWidthL}"), "over 0 to 100 in L*");
        return Reading.Of(new InkLimits([.. each.Select(l => l / 100)], total / 100));
    }

    private static Reading<InkLimits> Refused(string field, string found, string wanted) =>
        Reading.Refused<InkLimits>(new InputFault("separation", null, field, found, wanted));
}
