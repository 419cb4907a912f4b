using System.Text.Json;
using System.Text.Json.Serialization;
using Laydown.Shop;
using Laydown.Shop.Build;
using Laydown.Shop.Orders;
using Laydown.Web.Run;

namespace Laydown.Web.Http;

/// <summary>The HTTP interface: JSON with <c>schema</c> and <c>version</c>, over the same use cases as the pages and the command line.</summary>
public static class ShopInterface
{
    private const int Version = 1;

    /// <summary>Answers below <c>/api</c>.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder api = routes.MapGroup("/api").DisableAntiforgery();
        api.MapGet("/orders", OrdersAsync);
        api.MapGet("/items/{id}", ItemAsync);
        api.MapGet("/items/{id}/stack", StackAsync);
        api.MapGet("/orders/{id}/quote", QuoteInterface.QuoteAsync);
        api.MapGet("/orders/{id}/ways", QuoteInterface.WaysAsync);
        api.MapGet("/runs", RunsAsync);
        api.MapGet("/runs/{id}", RunAsync);
        api.MapPost("/day/plan", PlanAsync);
        api.MapPost("/runs/{id}/make", MakeAsync);
        api.MapPost("/runs/{id}/cancel", CancelAsync);
        api.MapGet("/progress", (string? run, ShopServices shop, MakingDesk desk, CancellationToken cancellation) =>
            TypedResults.ServerSentEvents(MakingNews.FeedAsync(shop, desk, run, cancellation)));
        api.MapPut("/orders/{order}/{name}", OrderUpload.TakeAsync);
        ColourInterface.Map(api);
    }

    private static async Task<IResult> OrdersAsync(ShopServices shop, CancellationToken cancellation)
    {
        IReadOnlyList<OrderRecord> orders = await shop.Store.OrdersAsync(cancellation);
        return Answer("orders", new
        {
            Orders = orders.Select(o => o with { Items = [.. o.Items.Select(Shown)] }),
            Refused = await shop.Store.RefusedOrdersAsync(cancellation),
        });
    }

    private static async Task<IResult> ItemAsync(string id, ShopServices shop, CancellationToken cancellation) =>
        await shop.Store.ItemAsync(id, cancellation) is { } item ? Answer("item", new { Item = Shown(item) }) : Missing("item", id);

    private static async Task<IResult> StackAsync(string id, ShopServices shop, CancellationToken cancellation) =>
        (await new ShowStack(shop.Catalogue, shop.Store).ShowAsync(id, cancellation)).Match(
            stack => Answer("item-stack", stack), faults => Answer("faults", new { Faults = faults }, StatusCodes.Status404NotFound));

    private static async Task<IResult> RunsAsync(ShopServices shop, CancellationToken cancellation) =>
        Answer("runs", new { Runs = await shop.Store.RunsAsync(cancellation) });

    private static async Task<IResult> RunAsync(string id, ShopServices shop, CancellationToken cancellation) =>
        await shop.Store.RunAsync(id, cancellation) is { } run
            ? Answer("run", new { Run = run, Refusals = await shop.Release.RefusalsAsync(run.Run, cancellation) })
            : Missing("run", id);

    private static async Task<IResult> PlanAsync(ShopServices shop, TimeProvider clock, CancellationToken cancellation) =>
        Answer("planned-day", new { Day = await MakingForms.PlanDayAsync(shop, clock, cancellation) });

    private static async Task<IResult> MakeAsync(string id, ShopServices shop, MakingDesk desk, CancellationToken cancellation)
    {
        if (await shop.Store.RunAsync(id, cancellation) is null)
            return Missing("run", id);
        return Answer("making", new { RunId = id, Started = desk.Start(id) }, StatusCodes.Status202Accepted);
    }

    private static async Task<IResult> CancelAsync(string id, ShopServices shop, MakingDesk desk, CancellationToken cancellation)
    {
        if (await shop.Store.RunAsync(id, cancellation) is null)
            return Missing("run", id);
        return Answer("making", new { RunId = id, Cancelled = desk.Cancel(id) }, StatusCodes.Status202Accepted);
    }

    // Where files lie on this machine is nobody's business outside it.
    private static ItemRecord Shown(ItemRecord item) => item with { ArtworkPath = Path.GetFileName(item.ArtworkPath) };

    /// <summary>A result with its schema's name and version beside it.</summary>
    internal static IResult Answer(string schema, object result, int status = StatusCodes.Status200OK) =>
        Results.Json(Wrapped(schema, result), ShopJson.Readable, statusCode: status);

    /// <summary>The same as a value, for answers that come as events.</summary>
    internal static JsonElement Told(string schema, object result) => JsonSerializer.SerializeToElement(Wrapped(schema, result), ShopJson.Compact);

    private static Envelope Wrapped(string schema, object result) => new(Invariant($"laydown/{schema}"), Version, JsonSerializer.SerializeToElement(result, ShopJson.Readable));

    private static IResult Missing(string what, string id) => Answer(
        "fault", new { Field = what, Found = Invariant($"no {what} '{id}'"), Wanted = Invariant($"the id of a {what} of this shop") },
        StatusCodes.Status404NotFound);

    private sealed record Envelope(string Schema, int Version, [property: JsonPropertyOrder(1)] JsonElement Result);
}
