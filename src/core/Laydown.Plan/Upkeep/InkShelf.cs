using Laydown.Press.Inks;

namespace Laydown.Plan.Upkeep;

/// <summary>Takes the ink that is poured from the lots on the shelf: the lot that expires first is poured first, none after its last day.</summary>
internal sealed class InkShelf
{
    private const double SlackMl = 1e-6;

    private readonly List<(InkPack Pack, double Left)> lots;
    private readonly Func<DateTimeOffset, DateOnly> dayOf;

    public InkShelf(IReadOnlyList<InkPack> packs, Func<DateTimeOffset, DateOnly> dayOf)
    {
        this.dayOf = dayOf;
        lots = [.. packs.OrderBy(p => p.Expires ?? DateOnly.MaxValue).ThenBy(p => p.Lot, StringComparer.Ordinal).Select(p => (p, p.Ml))];
    }

    /// <summary>The plans with lots for each top-up, in the order of time over all tanks.</summary>
    public IReadOnlyList<TankPlan> Fill(IReadOnlyList<TankPlan> plans)
    {
        Dictionary<TopUp, TopUp> filled = new(ReferenceEqualityComparer.Instance);
        foreach ((TankPlan plan, TopUp topUp) in plans.SelectMany(p => p.TopUps.Select(t => (p, t))).OrderBy(t => t.t.At).ThenBy(t => t.t.TankId, StringComparer.Ordinal))
            filled[topUp] = Draw(topUp, plan.Role);
        return [.. plans.Select(p => p with { TopUps = [.. p.TopUps.Select(t => filled[t])] })];
    }

    /// <summary>What must be on hand of each ink and what is to be ordered, after <see cref="Fill"/>.</summary>
    public IReadOnlyList<InkOrder> Orders(IReadOnlyList<TankPlan> plans, IReadOnlyList<InkPack> packs, double packMl, int leadDays, DateTimeOffset from, DateTimeOffset to) =>
        [.. plans.GroupBy(p => p.Role).OrderBy(g => g.Key).Select(g =>
        {
            List<TopUp> topUps = [.. g.SelectMany(p => p.TopUps).OrderBy(t => t.At)];
            double missing = topUps.Sum(t => t.MissingMl);
            DateOnly? needed = topUps.Find(t => t.MissingMl > SlackMl) is { } first ? dayOf(first.At) : null;
            return new InkOrder(
                g.Key,
                g.Sum(p => p.UsedMl),
                topUps.Sum(t => t.Ml),
                packs.Where(p => p.Role == g.Key && !(p.Expires < dayOf(from))).Sum(p => p.Ml),
                lots.Where(l => l.Pack.Role == g.Key && l.Pack.Expires < dayOf(to)).Sum(l => l.Left),
                missing,
                (int)Math.Ceiling((missing - SlackMl) / packMl),
                needed?.AddDays(-leadDays) < dayOf(from) ? dayOf(from) : needed?.AddDays(-leadDays),
                needed);
        })];

    private TopUp Draw(TopUp topUp, InkRole role)
    {
        DateOnly day = dayOf(topUp.At);
        List<PackDraw> draws = [];
        double left = topUp.Ml;
        for (int i = 0; i < lots.Count && left > SlackMl; i++)
        {
            (InkPack pack, double has) = lots[i];
            if (pack.Role != role || has <= SlackMl || pack.Expires < day)
                continue;
            double ml = Math.Min(left, has);
            lots[i] = (pack, has - ml);
            draws.Add(new(pack.Lot, ml, pack.Expires));
            left -= ml;
        }

        return topUp with { Lots = draws, MissingMl = left > SlackMl ? left : 0 };
    }
}
