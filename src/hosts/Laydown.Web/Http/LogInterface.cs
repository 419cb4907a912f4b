using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Log;
using Laydown.Shop;
using Laydown.Shop.Log;

namespace Laydown.Web.Http;

/// <summary>The log over HTTP: read by page, append an entry, charts, review, what it teaches.</summary>
public static class LogInterface
{
    /// <summary>Answers below <c>/api/log</c>.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder api = routes.MapGroup("/api/log").DisableAntiforgery();
        api.MapGet("", ListAsync);
        api.MapPost("", KeepAsync);
        api.MapGet("/estimates", EstimatesAsync);
        api.MapGet("/overhead", OverheadAsync);
        api.MapGet("/charts/{of}", ChartsAsync);
        api.MapGet("/review", ReviewAsync);
    }

    private static async Task<IResult> ListAsync(
        LogKind? kind, string? run, string? press, string? from, string? to, string? after, int? rows, ShopServices shop, CancellationToken cancellation)
    {
        if (shop.Log is not { } log)
            return Results.NotFound();
        if (after is not null && LogCursor.Read(after) is null)
            return Refused([new InputFault("log", null, "after", after, "what the page before gave as next")]);
        if (rows is < 1 or > LogWish.MostRows)
            return Refused([new InputFault("log", null, "rows", Invariant($"{rows}"), Invariant($"1 to {LogWish.MostRows}"))]);
        Reading<LogSpan> span = LogSpans.Of(press, from, to, shop.Catalogue);
        if (!span.IsTaken)
            return Refused(span.Faults);
        LogPage page = await log.Read.PageAsync(new(kind, run, span.Value, LogCursor.Read(after), rows ?? 50), cancellation);
        return ShopInterface.Answer("log-page", new { page.All, Next = page.Next?.ToString(), page.Entries });
    }

    private static async Task<IResult> ChartsAsync(
        ChartedFigure of, string? press, string? patch, string? from, string? to, ShopServices shop, CancellationToken cancellation)
    {
        if (shop.Log is not { } log)
            return Results.NotFound();
        Reading<LogSpan> span = LogSpans.Of(press, from, to, shop.Catalogue);
        return span.IsTaken ? ShopInterface.Answer("log-charts", await log.Charts.ShowAsync(of, span.Value, patch, cancellation)) : Refused(span.Faults);
    }

    private static async Task<IResult> ReviewAsync(string? press, string? from, string? to, ShopServices shop, CancellationToken cancellation)
    {
        if (shop.Log is not { } log)
            return Results.NotFound();
        Reading<LogSpan> span = LogSpans.Of(press, from, to, shop.Catalogue);
        return span.IsTaken ? (await log.Review.ReviewAsync(span.Value, cancellation)).Match(r => ShopInterface.Answer("log-review", r), Refused) : Refused(span.Faults);
    }

    private static async Task<IResult> KeepAsync(LogEntry entry, ShopServices shop, CancellationToken cancellation)
    {
        if (shop.Log is not { } log)
            return Results.NotFound();
        Reading<LogEntry> kept = await log.Keep.KeepAsync(entry, cancellation);
        return kept.Match(e => ShopInterface.Answer("log-entry", e, StatusCodes.Status201Created), Refused);
    }

    private static async Task<IResult> OverheadAsync(DateOnly? from, DateOnly? to, CountedRuns? count, ShopServices shop, CancellationToken cancellation)
    {
        if (shop.Log is not { } log)
            return Results.NotFound();
        Reading<OverheadReview> review = await log.Overhead.ReviewAsync(from, to, count ?? CountedRuns.Done, cancellation);
        return review.Match(r => ShopInterface.Answer("overhead-review", new { shop.Catalogue.Rates.Currency, Review = r, r.Left }), Refused);
    }

    private static async Task<IResult> EstimatesAsync(bool? ink, ShopServices shop, CancellationToken cancellation)
    {
        if (shop.Log is not { } log)
            return Results.NotFound();
        EstimateModel model = ink == true ? await log.Learn.InkAsync(cancellation) : await log.Learn.MinutesAsync(cancellation);
        return ShopInterface.Answer("estimates", new
        {
            Of = ink == true ? "inkMl" : "minutes",
            model.Runs,
            model.SetAside,
            Used = shop.Catalogue.Rates.Policy?.UseLearntTimes ?? false,
            Groups = model.All(),
        });
    }

    private static IResult Refused(IReadOnlyList<InputFault> faults) => ShopInterface.Answer("faults", new { Faults = faults }, StatusCodes.Status400BadRequest);
}
