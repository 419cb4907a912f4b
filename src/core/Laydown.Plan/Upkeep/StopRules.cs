using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Press.Machines;

namespace Laydown.Plan.Upkeep;

/// <summary>From a press, its inks and what work costs to what its long stops are decided by.</summary>
public static class StopRules
{
    /// <summary>Channels that may not stand for ever: those whose tank does not circulate, in the order of the press. The lines of <see cref="TermsOf"/> are these.</summary>
    public static IReadOnlyList<Channel> Limited(PressDescription press) =>
        [.. press.Channels.Where(c => press.Tanks.FirstOrDefault(t => t.Id == c.TankId)?.Circulates != true)];

    /// <summary>How long a line may stand, h.</summary>
    public static double LimitHours(LongStopRules rules, InkRole role) => role == InkRole.White ? Math.Min(rules.WhiteLimitHours, rules.LimitHours) : rules.LimitHours;

    /// <summary>The terms of a press. A limit counts in whole minutes, rounded down; a short run rounded up.</summary>
    /// <param name="press">The press.</param>
    /// <param name="inkSet">Its inks.</param>
    /// <param name="labourPerHour">An hour of work.</param>
    public static StopTerms TermsOf(PressDescription press, InkSet inkSet, Money labourPerHour)
    {
        LongStopRules rules = (press.Care ?? PressCare.Usual(press)).LongStop;
        return new(
            [.. Limited(press).Select(c => new StopLine(
                Math.Max(1, (int)Math.Floor((60 * LimitHours(rules, c.Role)) + 1e-9)), rules.FillMinutesPerLine, rules.BackMinutesPerLine, (Fluid(rules) + InkLost(rules, inkSet, c.Role)).Cents))],
            Math.Max(1, (int)Math.Ceiling(rules.ShortRunMinutes - 1e-9)), Money.Sum(press.Channels.Select(c => PerLitre(PriceOf(inkSet, c.Role), rules.ShortRunInkMlPerLine))).Cents,
            labourPerHour, press.Costs.PerHour, rules.VisitMinutes);
    }

    /// <summary>Storage fluid of one line.</summary>
    public static Money Fluid(LongStopRules rules) => PerLitre(rules.FluidPerLitre ?? default, rules.FluidMlPerLine);

    /// <summary>Ink lost by storing one line.</summary>
    public static Money InkLost(LongStopRules rules, InkSet inkSet, InkRole role) => PerLitre(PriceOf(inkSet, role), rules.InkLostMlPerLine);

    private static Money PriceOf(InkSet inkSet, InkRole role) => inkSet.Find(role)?.PricePerLitre ?? default;

    private static Money PerLitre(Money price, double ml) => Money.FromUnits(price.Units * (decimal)ml / 1000m);
}
