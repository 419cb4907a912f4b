using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Press.Machines;
using Laydown.Shop.Colour;
using Laydown.Shop.Layers;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>Prices an order in other quantities and made in other ways, as planning itself would; nothing is saved.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">What it remembers.</param>
/// <param name="measure">Measures the ink of a piece.</param>
/// <param name="looks">Looks of the shop; null where no item is printed from one.</param>
/// <param name="learn">Learns from the log; null where times stand as reckoned.</param>
public sealed class TryOrder(Catalogue catalogue, IShopStore store, IInkMeasure measure, LookShelf? looks = null, LearnEstimates? learn = null)
{
    /// <summary>Most quantities asked for at once.</summary>
    public const int MostBreaks = 12;

    /// <summary>Most pieces of a quantity.</summary>
    public const int MostPieces = 100_000;

    // Boards can be bought for an order that is quoted; offcuts cannot.
    private const int Bought = 1_000_000;

    // A piece is rendered once, however often and in whatever way it is priced.
    private readonly RememberedInk remembered = new(measure);

    /// <summary>Every item of an order at several quantities, each printed by itself.</summary>
    /// <param name="orderId">The order.</param>
    /// <param name="quantities">The quantities.</param>
    /// <param name="cancellation">Stops.</param>
    /// <param name="progress">Hears what is priced, each before it is; null for nobody.</param>
    /// <returns>The prices, or why there are none.</returns>
    public async Task<Reading<IReadOnlyList<ItemBreaks>>> BreaksAsync(
        string orderId, IReadOnlyList<int> quantities, CancellationToken cancellation, IProgress<PricedStep>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(quantities);
        if (quantities.Count is 0 or > MostBreaks)
            return Reading.Refused<IReadOnlyList<ItemBreaks>>(Fault(orderId, "breaks", Invariant($"{quantities.Count} quantities"), Invariant($"1 to {MostBreaks}")));
        if (quantities.FirstOrDefault(q => q is < 1 or > MostPieces) is var bad && quantities.Any(q => q is < 1 or > MostPieces))
            return Reading.Refused<IReadOnlyList<ItemBreaks>>(Fault(orderId, "breaks", Invariant($"{bad} pieces"), Invariant($"1 to {MostPieces} pieces")));
        Reading<IReadOnlyList<ItemRecord>> items = await ItemsAsync(orderId, cancellation);
        if (!items.IsTaken)
            return Reading.Refused<IReadOnlyList<ItemBreaks>>(items.Faults);

        PlanRuns plan = Planner(catalogue, remembered);
        int done = 0;
        List<ItemBreaks> all = [];
        foreach (ItemRecord item in items.Value)
        {
            List<QuoteBreak> breaks = [];
            foreach (int quantity in quantities)
            {
                progress?.Report(new(orderId, Invariant($"{item.Item.Id} at {quantity} {(quantity == 1 ? "piece" : "pieces")}"), done++, items.Value.Count * quantities.Count));
                breaks.Add(await BreakAsync(plan, item, quantity, cancellation));
            }

            all.Add(new(item.Item.Id, item.Item.Title, breaks));
        }

        return Reading.Of<IReadOnlyList<ItemBreaks>>(all);
    }

    /// <summary>An order as it is planned with others, by itself, in each other mode, and on other stocks.</summary>
    /// <param name="orderId">The order.</param>
    /// <param name="stockIds">Stocks to try in place of the one ordered.</param>
    /// <param name="cancellation">Stops.</param>
    /// <param name="progress">Hears what is priced, each before it is; null for nobody.</param>
    /// <returns>The scenarios, or why there are none.</returns>
    public async Task<Reading<IReadOnlyList<QuoteScenario>>> CompareAsync(string orderId, IReadOnlyList<string> stockIds, CancellationToken cancellation, IProgress<PricedStep>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(stockIds);
        if (stockIds.FirstOrDefault(id => catalogue.Stocks.All(s => !Is(s.Id, id))) is { } unknown)
            return Reading.Refused<IReadOnlyList<QuoteScenario>>(Fault(orderId, "stock", unknown, Invariant($"a stock of this shop: {string.Join(", ", catalogue.Stocks.Select(s => s.Id))}")));
        Reading<IReadOnlyList<ItemRecord>> items = await ItemsAsync(orderId, cancellation);
        if (!items.IsTaken)
            return Reading.Refused<IReadOnlyList<QuoteScenario>>(items.Faults);

        List<QuoteScenario> scenarios = [.. AsPlanned(items.Value, await store.RunsAsync(cancellation))];
        List<(string Name, Catalogue Shop, IReadOnlyList<ItemRecord> Items)> ways = [.. Ways(items.Value, stockIds)];
        foreach ((int done, (string name, Catalogue shop, IReadOnlyList<ItemRecord> made)) in ways.Index())
        {
            progress?.Report(new(orderId, name, done, ways.Count));
            scenarios.Add(await ScenarioAsync(name, shop, made, cancellation));
        }

        return Reading.Of<IReadOnlyList<QuoteScenario>>(scenarios);
    }

    // By itself, in each mode of each press, on each other stock.
    private IEnumerable<(string Name, Catalogue Shop, IReadOnlyList<ItemRecord> Items)> Ways(IReadOnlyList<ItemRecord> items, IReadOnlyList<string> stockIds) =>
    [
        ("by itself", catalogue, items),
        .. catalogue.Presses.SelectMany(p => p.Modes.Select(m => (Invariant($"{p.Name}, mode {m.Name}"), Only(p, m), items))),
        .. stockIds.Select(id => (Invariant($"on {catalogue.Stocks.First(s => Is(s.Id, id)).Name}"), catalogue,
            (IReadOnlyList<ItemRecord>)[.. items.Select(i => i with { Item = i.Item with { StockId = id } })])),
    ];

    private async Task<QuoteBreak> BreakAsync(PlanRuns plan, ItemRecord item, int quantity, CancellationToken cancellation)
    {
        PlannedRuns tried = await plan.TryAsync([item with { Item = item.Item with { Quantity = quantity } }], cancellation);

        // A search that is left half-way gives what it has: that is no price.
        cancellation.ThrowIfCancellationRequested();
        if (tried.Held.Count > 0 || tried.Runs.Count == 0)
            return new(quantity, null, null, 0, tried.Faults.FirstOrDefault()?.ToString() ?? "It cannot be planned.");
        List<CostSheet> costs = [.. tried.Runs.Select(r => r.Run.Cost)];
        var exact = Money.Sum(costs.Select(c => c.Price));
        Money price = (catalogue.Rates.Policy ?? new()).Rounded(exact);
        return new(quantity, price, Money.FromUnits(price.Units / quantity), tried.Runs.Sum(r => r.Run.Time.TotalMinutes),
            Invariant($"{(costs is [var one] ? one.MarkUpWords : Invariant($"cost {Money.Sum(costs.Select(c => c.Cost))} + overhead {Money.Sum(costs.Select(c => c.Overhead))} + margin {Money.Sum(costs.Select(c => c.Margin))}"))} = {exact}, rounded {price - exact}; {(tried.Runs.Sum(r => r.Run.SheetCount) is 1 ? "1 sheet" : Invariant($"{tried.Runs.Sum(r => r.Run.SheetCount)} sheets"))}{Learnt(tried.Runs.Select(r => r.Run))}"));
    }

    private async Task<QuoteScenario> ScenarioAsync(string name, Catalogue shop, IReadOnlyList<ItemRecord> items, CancellationToken cancellation)
    {
        PlannedRuns tried = await Planner(shop, remembered).TryAsync(items, cancellation);
        cancellation.ThrowIfCancellationRequested();
        return tried.Held.Count > 0 || tried.Runs.Count == 0
            ? new(name, null, null, 0, 0, 0, tried.Faults.FirstOrDefault()?.ToString() ?? "It cannot be planned.")
            : Scenario(name, [.. tried.Runs.Select(r => r.Run)], [.. items.Select(i => i.Item.Id)]);
    }

    // Runs shared with other orders count with the share of this one.
    private IEnumerable<QuoteScenario> AsPlanned(IReadOnlyList<ItemRecord> items, IReadOnlyList<RunRecord> runs)
    {
        HashSet<string> ids = [.. items.Select(i => i.Item.Id)];
        List<Laydown.Plan.Runs.Run> mine = [.. runs.Where(r => items.Any(i => Is(i.RunId, r.Run.Id))).Select(r => r.Run)];
        if (mine.Count > 0 && items.All(i => i.RunId is not null))
            yield return Scenario("as planned", mine, ids);
    }

    private QuoteScenario Scenario(string name, IReadOnlyList<Laydown.Plan.Runs.Run> runs, HashSet<string> ids)
    {
        Money[] prices = [.. runs.SelectMany(r => r.Cost.ItemPrices).Where(p => ids.Contains(p.ItemId)).GroupBy(p => p.ItemId).Select(g => Money.Sum(g.Select(p => p.Price)))];
        decimal Share(Laydown.Plan.Runs.Run run) => run.Cost.Price.Cents == 0 ? 1 : Money.Sum(run.Cost.ItemPrices.Where(p => ids.Contains(p.ItemId)).Select(p => p.Price)).Units / run.Cost.Price.Units;
        var net = QuoteSums.Of(prices, catalogue.Rates).Net;
        return new(
            name, Money.FromUnits(runs.Sum(r => r.Cost.Cost.Units * Share(r))), net, runs.Sum(r => r.Time.TotalMinutes * (double)Share(r)),
            runs.Sum(r => r.Inks.Sum(i => i.PrintedMl + i.SetUpMl) * (double)Share(r)), runs.Sum(r => r.SheetCount), string.Join("; ", runs.Select(r =>
                Invariant($"{r.Mode.ModeId} on {r.StockId}, {r.SheetCount} sheet{(r.SheetCount == 1 ? "" : "s")}{(Share(r) < 1 ? Invariant($", {100 * Share(r):0} % of run {r.Id}") : "")}"))) + Learnt(runs));
    }

    // How the log corrected the times that are priced here.
    private static string Learnt(IEnumerable<Laydown.Plan.Runs.Run> runs) => string.Concat(runs.Select(r => r.Time.LearntWords?.TrimEnd('.')).OfType<string>().Distinct().Select(w => "; " + w));

    private PlanRuns Planner(Catalogue shop, IInkMeasure ink) => new(
        shop with { Stocks = [.. shop.Stocks.Select(s => s.OtherSizeOf is null ? s with { OnHand = Math.Max(s.OnHand, Bought) } : s)] }, store, ink, looks, learn);

    // A shop of one press in one mode.
    private Catalogue Only(PressDescription press, Mode mode) => catalogue with { Presses = [press with { Modes = [mode] }] };

    private async Task<Reading<IReadOnlyList<ItemRecord>>> ItemsAsync(string orderId, CancellationToken cancellation)
    {
        OrderRecord? order = (await store.OrdersAsync(cancellation)).FirstOrDefault(o => Is(o.Order.Id, orderId));
        if (order is null)
            return Reading.Refused<IReadOnlyList<ItemRecord>>(Fault(orderId, "id", "no order of that id", "the id of an order that was taken"));
        List<ItemRecord> items = [.. order.Items.Where(i => i.Artwork is not null && i.State is not (ItemState.Waiting or ItemState.Stopped))];
        return items.Count > 0
            ? Reading.Of<IReadOnlyList<ItemRecord>>(items)
            : Reading.Refused<IReadOnlyList<ItemRecord>>(Fault(orderId, "items", "none that was checked and not held back", "at least one"));
    }

    private static InputFault Fault(string orderId, string field, string found, string wanted) => new(Invariant($"order {orderId}"), null, field, found, wanted);

    private static bool Is(string? one, string? other) => string.Equals(one, other, StringComparison.Ordinal);
}
