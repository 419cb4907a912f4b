using System.Globalization;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Web.Http;

/// <summary>Quotes over HTTP: the quote of an order with quantities, and ways to make it.</summary>
internal static class QuoteInterface
{
    /// <summary>The quote, with prices at the quantities in <paramref name="breaks"/>, such as <c>1,10,50</c>.</summary>
    public static async Task<IResult> QuoteAsync(string id, string? breaks, ShopServices shop, CancellationToken cancellation)
    {
        if (Quantities(breaks) is not { } quantities)
            return Refused([new InputFault(Invariant($"order {id}"), null, "breaks", breaks ?? "", "whole numbers with commas between, such as 1,10,50,100")]);
        Reading<Quote> quote = await shop.QuoteOrder.QuoteAsync(id, quantities, cancellation);
        return quote.Match(q => ShopInterface.Answer("quote", new { Quote = q }), Refused);
    }

    /// <summary>The order made in several ways.</summary>
    public static async Task<IResult> WaysAsync(string id, string[]? stock, ShopServices shop, CancellationToken cancellation)
    {
        if (shop.TryOrder is not { } trying)
            return Results.NotFound();
        Reading<IReadOnlyList<QuoteScenario>> ways = await trying.CompareAsync(id, stock ?? [], cancellation);
        return ways.Match(w => ShopInterface.Answer("quote-ways", new { OrderId = id, shop.Catalogue.Rates.Currency, Scenarios = w }), Refused);
    }

    /// <summary>Quantities as written with commas: none for nothing, null for what cannot be read.</summary>
    internal static IReadOnlyList<int>? Quantities(string? text)
    {
        List<int> quantities = [];
        foreach (string part in (text ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (!int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out int quantity))
                return null;
            quantities.Add(quantity);
        }

        return quantities;
    }

    private static IResult Refused(IReadOnlyList<InputFault> faults) => ShopInterface.Answer("faults", new { Faults = faults }, StatusCodes.Status400BadRequest);
}
