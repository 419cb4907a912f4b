using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>Sets the overhead that runs carried against what was spent. [PrintingJobCase]</summary>
/// <remarks>
/// Over-applied is what runs carried less what was spent. Where the shop budgets a kind, the difference is parted: spending (budget for this much work − spent) and volume (carried − that budget). Common practice, no source.
/// </remarks>
public static class OverheadReviews
{
    /// <summary>The review of a time.</summary>
    /// <param name="runs">Cost sheets of the runs that count.</param>
    /// <param name="spent">What was spent.</param>
    /// <param name="rates">The shop's rates, for what it budgets.</param>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day, not before the first.</param>
    /// <exception cref="ArgumentOutOfRangeException">The last day is before the first.</exception>
    public static OverheadReview Of(IReadOnlyList<CostSheet> runs, IReadOnlyList<OverheadSpent> spent, ShopRates rates, DateOnly from, DateOnly to)
    {
        if (to < from)
            throw new ArgumentOutOfRangeException(nameof(to), to, Invariant($"Last day: wanted {from:yyyy-MM-dd} or later."));
        List<OverheadLine> carried = [.. runs.SelectMany(Carried)];

        // Kinds of today first, then names that only older runs or entries know.
        IReadOnlyList<string> names = [.. Overheads.Names(rates).Concat(carried.Select(c => c.Name)).Concat(spent.Select(s => s.Name)).Distinct(StringComparer.Ordinal)];
        List<OverheadBalance> lines = [.. names.Select(n => Balance(n, carried, spent, rates, YearsOf(from, to)))];
        Money applied = Money.Sum(lines.Select(l => l.Applied)), all = Money.Sum(lines.Select(l => l.Spent)), cost = Money.Sum(runs.Select(r => r.Cost));
        return new(from, to, runs.Count, lines, applied, all, applied - all, cost + applied, cost + all, Money.Sum(runs.Select(r => r.Price)), Words(applied, all));
    }

    // Runs planned before kinds were kept carry one sum.
    private static IEnumerable<OverheadLine> Carried(CostSheet run) => run.OverheadLines is { Count: > 0 } lines ? lines
        : [new(Overheads.Whole, OverheadBase.Cost, run.Cost.Units, run.Cost.Cents == 0 ? 0 : run.Overhead.Units / run.Cost.Units, run.Overhead, "")];

    private static OverheadBalance Balance(string name, List<OverheadLine> carried, IReadOnlyList<OverheadSpent> spent, ShopRates rates, decimal years)
    {
        List<OverheadLine> own = [.. carried.Where(c => string.Equals(c.Name, name, StringComparison.Ordinal))];
        OverheadRate? rate = rates.Overheads?.FirstOrDefault(o => string.Equals(o.Name, name, StringComparison.Ordinal));
        OverheadBase? on = own.Count > 0 ? own[0].On : rate?.On;
        decimal quantity = own.Where(o => o.On == on).Sum(o => o.Quantity);
        Money applied = Money.Sum(own.Select(o => o.Amount)), paid = Money.Sum(spent.Where(s => string.Equals(s.Name, name, StringComparison.Ordinal)).Select(s => s.Amount));
        decimal? needed = quantity > 0 ? paid.Units / quantity : null;
        Money? budget = rate is null ? null : Money.FromUnits((rate.PerYear.Units * years) + ((rate.VariablePerUnit?.Units ?? 0) * quantity));
        return new(name, on, quantity, applied, paid, applied - paid, needed, budget, budget - paid, applied - budget, Because(on, quantity, applied, needed, budget));
    }

    private static string Because(OverheadBase? on, decimal quantity, Money applied, decimal? needed, Money? budget)
    {
        if (on is not { } spread || quantity <= 0)
            return "No run carried any.";
        string much = Overheads.IsMoney(spread) ? Invariant($"{Overheads.Words(spread)} {quantity:0.00}") : Invariant($"{quantity:0.0} {Overheads.Words(spread)}");
        return Invariant($"Carried at {Overheads.Rate(spread, applied.Units / quantity)} of {much}{(needed is > 0 ? Invariant($"; {Overheads.Rate(spread, needed.Value)} would have carried what was spent") : "")}.{(budget is { } b ? Invariant($" Budget for these days and this much work: {b}.") : "")}");
    }

    private static string Words(Money applied, Money spent)
    {
        if (spent.Cents == 0)
            return "Nothing is written down as spent in this time; what runs carried cannot be judged yet.";
        Money over = applied - spent;
        return over.Cents switch
        {
            0 => Invariant($"Runs carried just what was spent, {spent}."),
            > 0 => Invariant($"Over-applied by {over}: runs carried {applied}, {spent} was spent. The work cost {over} less than reckoned."),
            _ => Invariant($"Under-applied by {spent - applied}: runs carried {applied}, {spent} was spent. The work cost {spent - applied} more than reckoned."),
        };
    }

    // A whole calendar year is 1, a leap year too.
    private static decimal YearsOf(DateOnly from, DateOnly to)
    {
        decimal years = 0;
        for (int year = from.Year; year <= to.Year; year++)
        {
            int first = year == from.Year ? from.DayOfYear : 1, days = DateTime.IsLeapYear(year) ? 366 : 365;
            years += ((year == to.Year ? to.DayOfYear : days) - first + 1) / (decimal)days;
        }

        return years;
    }
}
