using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Web.Http;

/// <summary>What people decide about a run, over HTTP: another mode, letting it go, the first piece.</summary>
public static class RunInterface
{
    private const string Wanted = "JSON as docs/guide/letting-go.md shows it";

    /// <summary>Answers below <c>/api/runs/ID</c>.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder api = routes.MapGroup("/api/runs/{id}").DisableAntiforgery();
        api.MapPost("/let-go", (string id, HttpContext context, ShopServices shop) => JsonBody.WithAsync<MeasuredSheet>(
            context, Wanted, async sheet => Let(id, await shop.Release.ReleaseAsync(id, sheet, context.RequestAborted))));
        api.MapPost("/let-go/back", async (string id, HttpContext context, ShopServices shop) => Let(id, await shop.Release.TakeBackAsync(id, context.RequestAborted)));
        api.MapPost("/mode", (string id, HttpContext context, ShopServices shop) => JsonBody.WithAsync<ModeOverrule>(
            context, Wanted, async mode => Run(await shop.ChooseMode.ChooseAsync(id, mode, context.RequestAborted))));
        api.MapPost("/mode/as-proposed", async (string id, HttpContext context, ShopServices shop) => Run(await shop.ChooseMode.ChooseAsync(id, null, context.RequestAborted)));
        api.MapPost("/first-piece", (string id, HttpContext context, ShopServices shop) => JsonBody.WithAsync<FirstPieceApproval>(
            context, Wanted, async said => shop.FirstPiece is { } first
            ? (await first.ApproveAsync(id, said, context.RequestAborted)).Match(a => ShopInterface.Answer("first-piece", a), JsonBody.Refused)
            : JsonBody.Refused([new("log", null, "log", "none", "a shop that keeps a log")])));
    }

    private static IResult Let(string id, Reading<RunRecord> done) => done.Match(r => ShopInterface.Answer("let-go", new { RunId = id, Release = r.LetGo }), JsonBody.Refused);

    private static IResult Run(Reading<RunRecord> done) => done.Match(r => ShopInterface.Answer("run", new { Run = r }), JsonBody.Refused);
}
