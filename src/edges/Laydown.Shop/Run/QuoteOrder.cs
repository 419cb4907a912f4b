using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Orders;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>Quotes an order from the prices of the runs its items are in.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">What it remembers.</param>
/// <param name="documents">Writes the paper.</param>
/// <param name="clock">Tells which day it is.</param>
/// <param name="trying">Prices other quantities; null where nothing can.</param>
public sealed class QuoteOrder(ShopFolder folder, Catalogue catalogue, IShopStore store, IRunDocuments documents, TimeProvider clock, TryOrder? trying = null)
{
    /// <summary>The quote of an order, written to <c>quotes/<i>id</i>.pdf</c> whole or not at all; items held back are named without a price.</summary>
    /// <returns>The quote, or why there is none: no such order, or the paper could not be written.</returns>
    public Task<Reading<Quote>> QuoteAsync(string orderId, CancellationToken cancellation) => QuoteAsync(orderId, [], cancellation);

    /// <summary>The same with prices at other quantities on its lines.</summary>
    /// <param name="orderId">The order.</param>
    /// <param name="quantities">The quantities; none for a plain quote.</param>
    /// <param name="cancellation">Stops; then no paper is written.</param>
    /// <param name="progress">Hears what is priced, each before it is; null for nobody.</param>
    public async Task<Reading<Quote>> QuoteAsync(string orderId, IReadOnlyList<int> quantities, CancellationToken cancellation, IProgress<PricedStep>? progress = null)
    {
        OrderRecord? order = (await store.OrdersAsync(cancellation))
            .FirstOrDefault(o => string.Equals(o.Order.Id, orderId, StringComparison.Ordinal));
        if (order is null)
            return Refused(orderId, "id", "no order of that id", "the id of an order that was taken");

        Reading<IReadOnlyList<ItemBreaks>> breaks = quantities.Count == 0
            ? Reading.Of<IReadOnlyList<ItemBreaks>>([])
            : trying is null
            ? Reading.Refused<IReadOnlyList<ItemBreaks>>(new InputFault(Invariant($"order {orderId}"), null, "breaks", "nothing to price them with", "a shop that plans"))
            : await trying.BreaksAsync(orderId, quantities, cancellation, progress);
        if (!breaks.IsTaken)
            return Reading.Refused<Quote>(breaks.Faults);
        Quote quote = Quoted(order, await store.RunsAsync(cancellation), breaks.Value);
        try
        {
            string file = Path.Combine(folder.Quotes, Invariant($"{FileNameOf(orderId)}.pdf"));
            await WholeFile.WriteAsync(file, documents.QuotePdf(quote), cancellation);
            return Reading.Of(quote);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return Refused(orderId, "quote", failure.Message, "a folder that can be written, with room on the disk");
        }
    }

    /// <summary>The name of an order's papers: its id, with every sign that could lead out of a folder made a hyphen.</summary>
    public static string FileNameOf(string orderId) =>
        string.Concat(orderId.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '-'));

    private Quote Quoted(OrderRecord order, IReadOnlyList<RunRecord> runs, IReadOnlyList<ItemBreaks> breaks)
    {
        var today = DateOnly.FromDateTime(clock.GetLocalNow().Date);
        List<QuoteLine> lines = [.. order.Items.Select(i => Line(i, runs) with { Breaks = breaks.FirstOrDefault(b => string.Equals(b.ItemId, i.Item.Id, StringComparison.Ordinal))?.Breaks })];
        var sums = QuoteSums.Of([.. lines.Where(l => l.Price is not null).Select(l => l.Price!.Value)], catalogue.Rates);
        return new(
            catalogue.ShopName, order.Order, today, today.AddDays(catalogue.Rates.QuoteValidDays), catalogue.Rates.Currency,
            lines, sums.Net, catalogue.Rates.TaxPercent, sums.Tax, sums.Gross, sums.SmallOrder);
    }

    private QuoteLine Line(ItemRecord record, IReadOnlyList<RunRecord> runs)
    {
        Item item = record.Item;
        Stock? stock = catalogue.Stocks.FirstOrDefault(s => string.Equals(s.Id, item.StockId, StringComparison.Ordinal));
        string finishing = string.Join(", ", item.Finishing.Select(f => Words(f)));
        string text = Invariant($"{item.Title}, {item.Finished}, {stock?.Name ?? item.StockId}{(finishing.Length == 0 ? "" : Invariant($", {finishing}"))}");
        // A large item may be spread over several runs, so its shares are added up.
        List<Money> shares = [.. runs.Where(r => string.Equals(r.Run.Id, record.RunId, StringComparison.Ordinal))
            .SelectMany(r => r.Run.Cost.ItemPrices)
            .Where(p => string.Equals(p.ItemId, item.Id, StringComparison.Ordinal)).Select(p => p.Price)];
        if (shares.Count == 0)
            return new(item.Id, text, item.Quantity, null, WhyNot(record));
        var exact = Money.Sum(shares);
        Money price = (catalogue.Rates.Policy ?? new()).Rounded(exact);
        Plan.Runs.Run run = runs.First(r => string.Equals(r.Run.Id, record.RunId, StringComparison.Ordinal)).Run;
        return new(item.Id, text, item.Quantity, price, null,
            Invariant($"{exact} of {run.Cost.Price} of run {run.Id} ({run.Cost.MarkUpWords}), shared by printed area, ink and finishing; rounded {price - exact}"))
        {
            Made = run.Items.FirstOrDefault(i => string.Equals(i.ItemId, item.Id, StringComparison.Ordinal))?.Pieces is { } made && made > item.Quantity ? made : null,
        };
    }

    private static string Words(Finishing finishing) => finishing.Kind switch
    {
        FinishingKind.CutSquare => "cut square",
        FinishingKind.CutContour => "cut to contour",
        FinishingKind.Drill => Invariant($"{finishing.CountEach} holes drilled"),
        FinishingKind.Hem => "hemmed",
        FinishingKind.Eyelet => Invariant($"{finishing.CountEach} eyelets"),
        FinishingKind.Tape => "taped",
        FinishingKind.PolePocket => "pockets for poles",
        FinishingKind.Laminate => "laminated",
        FinishingKind.Mount => "mounted",
        _ => "packed",
    };

    private static string WhyNot(ItemRecord record)
    {
        Finding? stop = record.Findings.FirstOrDefault(f => f.Severity == Severity.Stop);
        return record.Faults.Count > 0 ? record.Faults[0].ToString() : stop?.What ?? "Not planned yet.";
    }

    private static Reading<Quote> Refused(string orderId, string field, string found, string wanted) =>
        Reading.Refused<Quote>(new InputFault(Invariant($"order {orderId}"), null, field, found, wanted));
}
