using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;
using Laydown.Web.Layers;

namespace Laydown.Web.Http;

/// <summary>Panels over HTTP: solving in the background, separating, choosing; the same use cases as the command line.</summary>
public static class LayersInterface
{
    /// <summary>Answers below <c>/api/looks</c>.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder api = routes.MapGroup("/api/looks").DisableAntiforgery();
        api.MapPost("/{item}", SolveAsync);
        api.MapPost("/{item}/separate", SeparateAsync);
        api.MapPost("/{item}/solving/cancel", (string item, SolveDesk desk) => ShopInterface.Answer("solving-cancel", new { ItemId = item, Cancelled = desk.Cancel(item) }));
        api.MapPost("/{item}/{look}/choose", ChooseAsync);
    }

    private static async Task<IResult> SolveAsync(string item, SolveBody form, ShopServices shop, SolveDesk desk, CancellationToken cancellation)
    {
        if (await shop.Store.ItemAsync(item, cancellation) is null)
            return Refused([Fault(item, "no item of that id")], StatusCodes.Status404NotFound);
        if (form.Ppi is not (null or (>= 10 and <= 600)))
            return Refused([new(Invariant($"item {item}"), null, "ppi", Invariant($"{form.Ppi}"), "10 to 600 ppi")], StatusCodes.Status400BadRequest);
        return ShopInterface.Answer("solving-start", new { ItemId = item, Started = desk.Start(form.For(item)) }, StatusCodes.Status202Accepted);
    }

    private static async Task<IResult> SeparateAsync(string item, double? ppi, string? condition, ShopServices shop, CancellationToken cancellation)
    {
        if (ppi is not (null or (>= 10 and <= 600)))
            return Refused([new(Invariant($"item {item}"), null, "ppi", Invariant($"{ppi}"), "10 to 600 ppi")], StatusCodes.Status400BadRequest);
        Reading<LookRecord> made = await shop.Layers.SeparateLook.SeparateAsync(item, condition, ppi ?? 150, null, cancellation);
        return made.IsTaken ? ShopInterface.Answer("look", new { Look = made.Value }) : Refused(made.Faults, StatusCodes.Status400BadRequest);
    }

    private static async Task<IResult> ChooseAsync(string item, string look, ShopServices shop, CancellationToken cancellation)
    {
        Reading<ItemRecord> chosen = await shop.Layers.ChooseLook.ChooseAsync(
            item, string.Equals(look, "none", StringComparison.OrdinalIgnoreCase) ? null : look, cancellation);
        return chosen.IsTaken
            ? ShopInterface.Answer("item-look", new { ItemId = item, chosen.Value.LookId, chosen.Value.State })
            : Refused(chosen.Faults, StatusCodes.Status400BadRequest);
    }

    private static InputFault Fault(string item, string found) => new(Invariant($"item {item}"), null, "item", found, "the id of an item of this shop");

    private static IResult Refused(IReadOnlyList<InputFault> faults, int status) => ShopInterface.Answer("faults", new { Faults = faults }, status);
}
