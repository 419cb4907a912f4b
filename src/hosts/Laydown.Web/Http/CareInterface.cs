using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Shop;
using Laydown.Shop.Press;

namespace Laydown.Web.Http;

/// <summary>Upkeep and stock room over HTTP.</summary>
public static class CareInterface
{
    private const string Wanted = "JSON as the guides of upkeep and stock room show it";

    /// <summary>Answers below <c>/api/upkeep</c> and <c>/api/stock</c>.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder api = routes.MapGroup("/api").DisableAntiforgery();
        api.MapGet("/upkeep/{press}", PlanAsync);
        api.MapGet("/upkeep/{press}/reading", WrittenAsync);
        api.MapPost("/upkeep/{press}/reading", (string press, HttpContext context, ShopServices shop) => JsonBody.WithAsync<PressReading>(
            context, Wanted, async reading => (await shop.Press.Read.WriteAsync(press, reading, context.RequestAborted)).Match(p => ShopInterface.Answer("press-care", p), JsonBody.Refused)));
        api.MapGet("/stock", async (ShopServices shop, CancellationToken cancellation) => ShopInterface.Answer("stock-room-view", await shop.Press.Stock.ShowAsync(cancellation)));
        api.MapPost("/stock/receive", (HttpContext context, ShopServices shop) => JsonBody.WithAsync<GoodsIn>(
            context, Wanted, async goods => Told(await shop.Press.Receive.ReceiveAsync(goods, context.RequestAborted))));
        api.MapPost("/stock/moves", (HttpContext context, ShopServices shop) => JsonBody.WithAsync<IReadOnlyList<StockMove>>(
            context, Wanted, async moves => Told(await shop.Press.Move.DoAsync(_ => Reading.Of(moves), context.RequestAborted))));
        api.MapPost("/stock/runs/{run}/{step}", RunAsync);
        api.MapPost("/stock/reorder", (HttpContext context, ShopServices shop) => JsonBody.WithAsync<ReorderWish>(
            context, "stockId and at, or null for none, and to", async wish => (await shop.Press.Reorder.SetAsync(wish, context.RequestAborted)).Match(p => ShopInterface.Answer("reorder-point", p), JsonBody.Refused)));
    }

    private static async Task<IResult> PlanAsync(string press, int? days, ShopServices shop, TimeProvider clock, CancellationToken cancellation) =>
        (await shop.Press.Upkeep.PlanAsync(press, clock.GetUtcNow(), days ?? PlanUpkeep.UsualDays, cancellation)).Match(p => ShopInterface.Answer("upkeep-plan", p), JsonBody.Refused);

    // What was written down, with every level as it holds now and the mark that a new shelf must name.
    private static async Task<IResult> WrittenAsync(string press, ShopServices shop, CancellationToken cancellation)
    {
        if (shop.Catalogue.Presses.FirstOrDefault(p => p.Id == press) is not { } described)
            return JsonBody.Refused([new("upkeep", null, "pressId", press, "one of " + string.Join(", ", shop.Catalogue.Presses.Select(p => p.Id)))]);
        PressCarePage? page = await shop.Press.Book.ReadAsync(press, cancellation);
        return ShopInterface.Answer("press-care-written", new { page?.State, Packs = page?.Packs ?? [], Levels = await shop.Press.Levels.OfAsync(described, cancellation), Shelf = ShelfMark.Of(page?.Packs ?? []) });
    }

    private static async Task<IResult> RunAsync(string run, string step, string? by, string? place, ShopServices shop, CancellationToken cancellation) =>
        Enum.TryParse(step, ignoreCase: true, out RunStockStep what) && Enum.IsDefined(what)
            ? Told(await shop.Press.RunStock.DoAsync(run, what, by ?? "operator", place, cancellation))
            : JsonBody.Refused([new("stock room", null, "step", step.Length > 40 ? step[..40] : step, "reserve, release or take")]);

    private static IResult Told(Reading<StockChange> change) => change.Match(c => ShopInterface.Answer("stock-change", c), JsonBody.Refused);
}
