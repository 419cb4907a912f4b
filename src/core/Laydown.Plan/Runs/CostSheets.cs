using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Orders;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>Cost and price of a run: media with its waste, ink, press, labour, spoilage, finishing; then overhead and margin.</summary>
/// <remarks>
/// Every line is rounded to the cent once and the totals are sums of lines, so a reader who adds them up gets the same. Shared lines go to the items
/// by printed area, ink by what each item takes, finishing to its item; the price is shared in whole cents by largest remainder. Common practice, no source.
/// </remarks>
public static class CostSheets
{
    private static readonly FinishingKind[] OrderOfWork =
    [
        FinishingKind.Laminate, FinishingKind.Mount, FinishingKind.CutContour, FinishingKind.CutSquare, FinishingKind.Drill, FinishingKind.Tape, FinishingKind.Hem, FinishingKind.PolePocket, FinishingKind.Eyelet, FinishingKind.Pack,
    ];

    /// <summary>Reckons the cost sheet.</summary>
    /// <returns>The sheet, or a fault for each kind of finishing that the shop has no rate for.</returns>
    public static Reading<CostSheet> Of(RunRequest request, RunTime time, IReadOnlyList<InkUse> inks)
    {
        List<InputFault> faults = [.. request.Items.SelectMany(i => i.Item.Finishing).Select(f => f.Kind).Distinct()
            .Where(k => RateOf(request.Rates, k) is null)
            .Select(k => new InputFault("shop.json", null, "/rates/finishingRates", Invariant($"no rate for {k}"), "minutes and material of every finishing the shop sells"))];
        if (faults.Count > 0)
            return Reading.Refused<CostSheet>(faults);

        CostLine media = Media(request);
        List<CostLine> ink = [.. inks.Where(i => i.PrintedMl + i.SetUpMl > 0).Select(i => Ink(request, i))];
        List<CostLine> shared = [media, .. OffcutCredit(request), Spoil(request, media, ink), PressTime(request, time), Labour(request, time)];
        List<CostLine> finishing = [.. request.Items.SelectMany(i => Finishings(request, i))];
        List<CostLine> lines = [.. shared, .. ink, .. finishing];

        CostSheet sheet = MarkUps.On(lines, cost => Bases(request, time, cost), request.Rates);
        IReadOnlyList<Money> parts = Shares.Of(sheet.Price, [.. request.Items.Select(i => Weight(request, i, shared, ink, finishing))]);
        return Reading.Of(sheet with { ItemPrices = [.. request.Items.Select((i, n) => new ItemPrice(i.Item.Id, request.Pieces(i.Item.Id), parts[n]))] });
    }

    // Those at the press, and those who finish.
    private static OverheadBases Bases(RunRequest request, RunTime time, Money cost)
    {
        decimal press = (decimal)time.TotalMinutes / 60m, people = ((decimal)time.LabourMinutes / 60m) + ((decimal)FinishingMinutes(request) / 60m);
        return new(cost, Money.FromUnits(request.Rates.LabourPerHour.Units * people), press, people);
    }

    // Of several stocks each is told with its own part.
    private static CostLine Media(RunRequest request)
    {
        (Money Amount, string Because)[] parts = [.. request.Stocks.Where(s => request.SheetsOf(s).Any()).Select(s => Media(request, s))];
        return new("Media", Money.Sum(parts.Select(p => p.Amount)), string.Join(" + ", parts.Select(p => p.Because)), null);
    }

    private static (Money Amount, string Because) Media(RunRequest request, Stock stock)
    {
        if (stock.Kind == StockKind.Roll)
        {
            decimal metres = (decimal)SetUps.RollLengthM(request, stock);
            return (Money.FromUnits(stock.Price.Units * metres), Invariant($"{metres:0.00} m of {stock.Name}, whole width of {stock.WidthMm:0} mm, × {stock.Price}/m"));
        }

        int count = SetUps.NeededOnHand(request, stock);
        return (Money.FromUnits(stock.Price.Units * count), Invariant($"{count} × {stock.Name}, waste included, × {stock.Price}"));
    }

    // What is kept of a sheet is taken off its price, by area, at the share the shop thinks it will sell it for.
    private static IEnumerable<CostLine> OffcutCredit(RunRequest request)
    {
        double percent = request.Rates.Policy?.OffcutCreditPercent ?? 0;
        if (percent <= 0 || request.Stock.Kind != StockKind.Board)
            yield break;
        foreach (Stock stock in request.Stocks)
        {
            double offcutsM2 = request.SheetsOf(stock).Sum(s => s.Repeats * s.Offcuts.Sum(o => o.Size.AreaM2));
            decimal perM2 = stock.Price.Units / (decimal)stock.Size.AreaM2;
            if (offcutsM2 > 0)
                yield return new("Offcut credit", Money.FromUnits(-perM2 * (decimal)offcutsM2 * (decimal)Math.Min(100, percent) / 100m),
                    Invariant($"{offcutsM2:0.000} m² kept × {perM2:0.00}/m² × {percent:0.#} %"), null);
        }
    }

    private static CostLine Spoil(RunRequest request, CostLine media, List<CostLine> ink)
    {
        Money material = media.Amount + Money.Sum(ink.Select(i => i.Amount));
        return new("Spoilage allowance", Money.FromUnits(material.Units * (decimal)request.Rates.SpoilPercent / 100m),
            Invariant($"{request.Rates.SpoilPercent} % of media and ink {material}"), null);
    }

    private static CostLine Ink(RunRequest request, InkUse use)
    {
        Money perLitre = request.InkSet.Find(use.Role)?.PricePerLitre ?? default;
        double ml = use.PrintedMl + use.SetUpMl;
        return new(Invariant($"Ink, {InkWords.Of(use.Role).ToLowerInvariant()}"), Money.FromUnits(perLitre.Units * (decimal)ml / 1000m),
            Invariant($"{use.PrintedMl:0.0} ml printed + {use.SetUpMl:0.0} ml set-up × {perLitre}/l"), null);
    }

    private static CostLine PressTime(RunRequest request, RunTime time) => new("Press time",
        Money.FromUnits(request.Press.Costs.PerHour.Units * (decimal)time.TotalMinutes / 60m),
        Invariant($"{time.TotalMinutes:0.0} min (set-up {time.SetUpMinutes:0.0}, printing {time.PrintMinutes:0.0}, handling {time.HandlingMinutes:0.0}) × {request.Press.Costs.PerHour}/h"), null);

    private static CostLine Labour(RunRequest request, RunTime time) => new("Operator",
        Money.FromUnits(request.Rates.LabourPerHour.Units * (decimal)time.LabourMinutes / 60m),
        Invariant($"{time.LabourMinutes:0.0} min {(time.CrewMinutes is null ? "" : "of people ")}at the press × {request.Rates.LabourPerHour}/h"), null);

    private static IEnumerable<CostLine> Finishings(RunRequest request, PlannedItem planned)
    {
        int pieces = request.Pieces(planned.Item.Id);
        foreach (Finishing finishing in planned.Item.Finishing)
        {
            FinishingRate rate = RateOf(request.Rates, finishing.Kind)!;
            decimal units = Units(planned, finishing, pieces);
            decimal minutes = (decimal)rate.MinutesFirst + ((decimal)rate.MinutesPerUnit * units);
            decimal amount = (minutes / 60m * request.Rates.LabourPerHour.Units) + (rate.MaterialPerUnit.Units * units);
            yield return new(Invariant($"Finishing, {FinishingWords.Of(finishing.Kind)}"), Money.FromUnits(amount),
                Invariant($"{minutes:0.0} min × {request.Rates.LabourPerHour}/h + {units:0.##} × {rate.MaterialPerUnit}"), planned.Item.Id);
        }
    }

    /// <summary>Minutes of work after the press, all items and kinds; kinds without a rate count nothing.</summary>
    internal static double FinishingMinutes(RunRequest request) => request.Items.Sum(i => i.Item.Finishing.Sum(f => FinishingMinutes(request, i, f)));

    /// <summary>The same by kind, in the order of work: laminated and mounted before it is cut, cut before drilled, taped or sewn, eyelets after hems, packed last (common practice, no source).</summary>
    internal static IReadOnlyList<FinishingStep> FinishingSteps(RunRequest request) =>
        [.. request.Items.SelectMany(i => i.Item.Finishing.Select(f => (f.Kind, Minutes: FinishingMinutes(request, i, f)))).GroupBy(f => f.Kind)
            .OrderBy(g => Array.IndexOf(OrderOfWork, g.Key)).Select(g => new FinishingStep(g.Key, g.Sum(f => f.Minutes))).Where(s => s.Minutes > 0)];

    private static double FinishingMinutes(RunRequest request, PlannedItem planned, Finishing finishing) => RateOf(request.Rates, finishing.Kind) is { } rate
        ? rate.MinutesFirst + (rate.MinutesPerUnit * (double)Units(planned, finishing, request.Pieces(planned.Item.Id)))
        : 0;

    private static decimal Units(PlannedItem planned, Finishing finishing, int pieces)
    {
        decimal edgeM = (decimal)(2 * (planned.Item.WidthMm + planned.Item.HeightMm)) / 1000m;
        return finishing.Kind switch
        {
            FinishingKind.CutSquare or FinishingKind.Hem => edgeM * pieces,
            FinishingKind.CutContour => (planned.CutLengthMm is { } cut ? (decimal)cut / 1000m : edgeM) * pieces,
            FinishingKind.Laminate or FinishingKind.Mount => (decimal)(planned.Item.WidthMm * planned.Item.HeightMm) / 1_000_000m * pieces,
            FinishingKind.Drill or FinishingKind.Eyelet => finishing.CountEach * pieces,
            _ => pieces,
        };
    }

    // What an item weighs in the price: its share by area of what all share, its own ink, its own finishing.
    private static decimal Weight(RunRequest request, PlannedItem planned, List<CostLine> shared, List<CostLine> ink, List<CostLine> finishing)
    {
        double all = request.Items.Sum(i => request.AreaM2(i.Item.Id));
        decimal area = all > 0 ? (decimal)(request.AreaM2(planned.Item.Id) / all) : 1m / request.Items.Count;
        double inkAll = request.Items.Sum(i => InkPrice(request, i));
        decimal inkShare = inkAll > 0 ? (decimal)(InkPrice(request, planned) / inkAll) : area;
        return (area * Money.Sum(shared.Select(l => l.Amount)).Units)
            + (inkShare * Money.Sum(ink.Select(l => l.Amount)).Units)
            + Money.Sum(finishing.Where(l => string.Equals(l.ItemId, planned.Item.Id, StringComparison.Ordinal)).Select(l => l.Amount)).Units;
    }

    private static double InkPrice(RunRequest request, PlannedItem planned) => request.AreaM2(planned.Item.Id)
        * planned.Ink.Sum(c => c.MeanCoverage * (double)(request.InkSet.Find(c.Role)?.PricePerLitre.Units ?? 0));

    private static FinishingRate? RateOf(ShopRates rates, FinishingKind kind) => rates.FinishingRates.FirstOrDefault(r => r.Kind == kind);
}
