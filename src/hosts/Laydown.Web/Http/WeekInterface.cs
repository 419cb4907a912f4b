using System.Text.Json;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Week;

namespace Laydown.Web.Http;

/// <summary>The week over HTTP.</summary>
public static class WeekInterface
{
    /// <summary>Answers <c>GET /api/week</c>, <c>POST /api/week</c> with one change as JSON, <c>POST /api/week/try</c> with what putting a run would make, and <c>GET /api/week/presses/{run}</c> with the run on every other press.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder api = routes.MapGroup("/api").DisableAntiforgery();
        api.MapGet("/week", async (ShopServices shop, CancellationToken cancellation) => Told(await shop.Week.PlanAsync(cancellation)));
        api.MapGet("/week/presses/{run}", async (string run, ShopServices shop, CancellationToken cancellation) =>
            (await shop.Week.ElsewhereAsync(run, null, cancellation)).Match(e => ShopInterface.Answer("week-presses", e), Refused));
        api.MapPost("/week", (HttpContext context, ShopServices shop) => TakeAsync(context, change => ChangeAsync(change, shop.Week, context.RequestAborted)));
        api.MapPost("/week/try", (HttpContext context, ShopServices shop) => TakeAsync(context, change => TryAsync(change, shop.Week, context.RequestAborted)));
    }

    // Only a body that says it is JSON is taken: no form of another site can send that.
    private static async Task<IResult> TakeAsync(HttpContext context, Func<WeekChange, Task<IResult>> act)
    {
        if (!context.Request.HasJsonContentType())
            return Refused([new("body", null, "content type", context.Request.ContentType ?? "none", "application/json")]);
        try
        {
            WeekChange? change = await JsonSerializer.DeserializeAsync<WeekChange>(context.Request.Body, ShopJson.Compact, context.RequestAborted);
            return change is { Kind: "back" or "afresh" } or { Kind: not null, Runs.Count: > 0 }
                ? await act(change)
                : Refused([new("body", null, "/runs", "none", "a kind of change and at least one run")]);
        }
        catch (JsonException failure)
        {
            return Refused([new("body", null, failure.Path ?? "/", failure.Message, "JSON as the guide of the week shows it")]);
        }
    }

    private static async Task<IResult> ChangeAsync(WeekChange change, PlanWeek week, CancellationToken cancellation) => change.Kind switch
    {
        "put" when change.At is { } at => Told(await week.PinAsync(change.Runs[0], at, cancellation)),
        "put" => Refused([new("body", null, "/at", "none", "when the run begins, such as 2026-11-27T10:00")]),
        "let" => Told(await week.UnpinAsync(change.Runs[0], cancellation)),
        "lock" => Told(await week.LockAsync(change.Runs, cancellation)),
        "unlock" => Told(await week.UnlockAsync(change.Runs[0], cancellation)),
        "press" => Told(await week.PutOnPressAsync(change.Runs[0], change.Press ?? "", change.By ?? "", change.Reason ?? "", change.At, cancellation)),
        "afresh" => Told(await week.AfreshAsync(cancellation)),
        "back" => Told(await week.BackAsync(cancellation)),
        _ => Refused([new("body", null, "/kind", change.Kind, "put, let, lock, unlock, press, afresh or back")]),
    };

    private static async Task<IResult> TryAsync(WeekChange change, PlanWeek week, CancellationToken cancellation) => change is { Kind: "put", Runs.Count: > 0, At: { } at }
        ? (await week.TryPinAsync(change.Runs[0], at, cancellation)).Match(t => ShopInterface.Answer("week-trial", t), Refused)
        : Refused([new("body", null, "/kind", change.Kind, "put, with when the run would begin")]);

    private static IResult Told(Reading<WeekView> week) => week.Match(w => ShopInterface.Answer("week", w), Refused);

    private static IResult Refused(IReadOnlyList<InputFault> faults) => ShopInterface.Answer("faults", new { Faults = faults }, StatusCodes.Status400BadRequest);
}
