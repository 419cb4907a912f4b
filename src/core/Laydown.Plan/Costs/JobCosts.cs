using Laydown.Measures;
using Laydown.Plan.Orders;

namespace Laydown.Plan.Costs;

/// <summary>Cost and price of an item from what a file tells of it; set-up is shared over its pieces alone. Common practice, no source.</summary>
/// <remarks>Every line is rounded to the cent once; the totals are sums of lines. The same overhead, margin and spoilage as for planned runs.</remarks>
public static class JobCosts
{
    /// <summary>Reckons the sheet at a quantity.</summary>
    /// <param name="job">The quote.</param>
    /// <param name="item">The item.</param>
    /// <param name="pieces">How many, 1 or more.</param>
    /// <returns>The sheet, or a fault for each finishing the shop has no rate for.</returns>
    public static Reading<CostSheet> Of(QuoteJob job, QuoteJobItem item, int pieces)
    {
        ShopRates rates = job.Rates;
        List<InputFault> faults = [.. (item.Finishing ?? []).Where(f => RateOf(rates, f.Kind) is null)
            .Select(f => new InputFault(job.OrderId, null, Invariant($"item {item.Id}, finishing"), Invariant($"no rate for {f.Kind}"), "minutes and material of every finishing that is quoted"))];
        if (faults.Count > 0)
            return Reading.Refused<CostSheet>(faults);

        List<CostLine> used = [.. item.Materials.Select(m => Material(item, m, pieces)), .. item.Inks.Select(i => Ink(item, i, pieces))];
        decimal minutes = (decimal)item.SetUpMinutes + ((decimal)item.MinutesEach * pieces);
        List<(CostLine Line, decimal Minutes)> finishing = [.. (item.Finishing ?? []).Select(f => Finished(item, f, RateOf(rates, f.Kind)!, rates, pieces))];
        List<CostLine> lines =
        [
            .. used, .. Spoil(item, used, rates),
            .. ByTime(item, "Press time", minutes, job.PressPerHour), .. ByTime(item, "Operator", minutes, rates.LabourPerHour),
            .. finishing.Select(f => f.Line), .. (item.Bought ?? []).Select(b => Bought(item, b, pieces)),
        ];
        decimal press = minutes / 60m, people = press + (finishing.Sum(f => f.Minutes) / 60m);
        CostSheet sheet = MarkUps.On(lines, cost => new(cost, Money.FromUnits(rates.LabourPerHour.Units * people), press, people), rates);
        return Reading.Of(sheet with { ItemPrices = [new(item.Id, pieces, sheet.Price)] });
    }

    private static CostLine Material(QuoteJobItem item, JobMaterial material, int pieces)
    {
        decimal units = material.Once + (material.Each * pieces);
        if (material.Whole)
            units = Math.Ceiling(units);
        return new(material.Name, Money.FromUnits(material.Price.Units * units), Invariant($"{units:0.###}{(material.Whole ? " whole" : "")}, waste included, × {material.Price}"), item.Id);
    }

    private static CostLine Ink(QuoteJobItem item, JobInk ink, int pieces)
    {
        double ml = ink.OnceMl + (ink.EachMl * pieces);
        return new(Invariant($"Ink, {ink.Name}"), Money.FromUnits(ink.PricePerLitre.Units * (decimal)ml / 1000m),
            Invariant($"{ink.EachMl * pieces:0.0} ml printed + {ink.OnceMl:0.0} ml set-up × {ink.PricePerLitre}/l"), item.Id);
    }

    private static IEnumerable<CostLine> Spoil(QuoteJobItem item, List<CostLine> used, ShopRates rates)
    {
        var all = Money.Sum(used.Select(u => u.Amount));
        if (rates.SpoilPercent > 0)
            yield return new("Spoilage allowance", Money.FromUnits(all.Units * (decimal)rates.SpoilPercent / 100m), Invariant($"{rates.SpoilPercent} % of material and ink {all}"), item.Id);
    }

    private static IEnumerable<CostLine> ByTime(QuoteJobItem item, string name, decimal minutes, Money perHour)
    {
        if (minutes > 0 && perHour.Cents > 0)
            yield return new(name, Money.FromUnits(perHour.Units * minutes / 60m), Invariant($"{minutes:0.0} min × {perHour}/h"), item.Id);
    }

    private static (CostLine Line, decimal Minutes) Finished(QuoteJobItem item, JobFinishing finishing, FinishingRate rate, ShopRates rates, int pieces)
    {
        decimal units = finishing.UnitsEach * pieces, minutes = (decimal)rate.MinutesFirst + ((decimal)rate.MinutesPerUnit * units);
        decimal amount = (minutes / 60m * rates.LabourPerHour.Units) + (rate.MaterialPerUnit.Units * units);
        return (new(Invariant($"Finishing, {FinishingWords.Of(finishing.Kind)}"), Money.FromUnits(amount),
            Invariant($"{minutes:0.0} min × {rates.LabourPerHour}/h + {units:0.##} × {rate.MaterialPerUnit}"), item.Id), minutes);
    }

    private static CostLine Bought(QuoteJobItem item, JobBought bought, int pieces) => new(
        Invariant($"Bought in, {bought.Name}"), new(bought.Once.Cents + (bought.Each.Cents * pieces)), Invariant($"{bought.Once} once + {pieces} × {bought.Each}"), item.Id);

    private static FinishingRate? RateOf(ShopRates rates, FinishingKind kind) => rates.FinishingRates.FirstOrDefault(r => r.Kind == kind);
}
