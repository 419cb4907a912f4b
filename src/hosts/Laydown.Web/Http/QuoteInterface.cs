using System.Globalization;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Web.Http;

/// <summary>Quotes over HTTP: the quote of an order with quantities, and ways to make it.</summary>
internal static class QuoteInterface
{
    private const string RefusedSchema = "faults";

    /// <summary>The quote, with prices at the quantities in <paramref name="breaks"/>, such as <c>1,10,50</c>; told as it goes to who accepts events.</summary>
    public static async Task<IResult> QuoteAsync(string id, string? breaks, HttpRequest request, ShopServices shop, CancellationToken cancellation)
    {
        if (Quantities(breaks) is not { } quantities)
            return Refused([new InputFault(Invariant($"order {id}"), null, "breaks", breaks ?? "", "whole numbers with commas between, such as 1,10,50,100")]);
        return await ToldAsync(request, async (progress, gone) => (await shop.QuoteOrder.QuoteAsync(id, quantities, gone, progress)).Match(
            q => ("quote", (object)new { Quote = q }), Faults), cancellation);
    }

    /// <summary>The order made in several ways; told as it goes to who accepts events.</summary>
    public static async Task<IResult> WaysAsync(string id, string[]? stock, HttpRequest request, ShopServices shop, CancellationToken cancellation)
    {
        if (shop.TryOrder is not { } trying)
            return Results.NotFound();
        return await ToldAsync(request, async (progress, gone) => (await trying.CompareAsync(id, stock ?? [], gone, progress)).Match(
            w => ("quote-ways", (object)new { OrderId = id, shop.Catalogue.Rates.Currency, Scenarios = w }), Faults), cancellation);
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

    // As events where they are asked for, else once it is done.
    private static async Task<IResult> ToldAsync(HttpRequest request, Func<IProgress<PricedStep>?, CancellationToken, Task<(string Schema, object Result)>> work, CancellationToken cancellation)
    {
        if (request.GetTypedHeaders().Accept.Any(a => a.MediaType.Equals("text/event-stream", StringComparison.OrdinalIgnoreCase)))
            return TypedResults.ServerSentEvents(PricingNews.FeedAsync(work, cancellation));
        (string schema, object result) = await work(null, cancellation);
        return ShopInterface.Answer(schema, result, schema == RefusedSchema ? StatusCodes.Status400BadRequest : StatusCodes.Status200OK);
    }

    private static (string Schema, object Result) Faults(IReadOnlyList<InputFault> faults) => (RefusedSchema, new { Faults = faults });

    private static IResult Refused(IReadOnlyList<InputFault> faults) => ShopInterface.Answer(RefusedSchema, new { Faults = faults }, StatusCodes.Status400BadRequest);
}
