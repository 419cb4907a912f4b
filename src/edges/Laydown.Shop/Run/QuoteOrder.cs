using Laydown.Measures;
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
public sealed class QuoteOrder(ShopFolder folder, Catalogue catalogue, IShopStore store, IRunDocuments documents, TimeProvider clock)
{
    /// <summary>The quote of an order, written to <c>quotes/<i>id</i>.pdf</c> whole or not at all; items held back are named without a price.</summary>
    /// <returns>The quote, or why there is none: no such order, or the paper could not be written.</returns>
    public async Task<Reading<Quote>> QuoteAsync(string orderId, CancellationToken cancellation)
    {
        OrderRecord? order = (await store.OrdersAsync(cancellation))
            .FirstOrDefault(o => string.Equals(o.Order.Id, orderId, StringComparison.Ordinal));
        if (order is null)
            return Refused(orderId, "id", "no order of that id", "the id of an order that was taken");

        Quote quote = Quoted(order, await store.RunsAsync(cancellation));
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

    private Quote Quoted(OrderRecord order, IReadOnlyList<RunRecord> runs)
    {
        var today = DateOnly.FromDateTime(clock.GetLocalNow().Date);
        List<QuoteLine> lines = [.. order.Items.Select(i => Line(i, runs))];
        Money net = Money.Sum(lines.Select(l => l.Price ?? default));
        var tax = Money.FromUnits(net.Units * (decimal)catalogue.Rates.TaxPercent / 100m);
        return new(
            catalogue.ShopName, order.Order, today, today.AddDays(catalogue.Rates.QuoteValidDays), catalogue.Rates.Currency,
            lines, net, catalogue.Rates.TaxPercent, tax, net + tax);
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
        return shares.Count > 0
            ? new(item.Id, text, item.Quantity, Money.Sum(shares), null)
            : new(item.Id, text, item.Quantity, null, WhyNot(record));
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
