using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Shop;
using Laydown.Shop.Press;
using Laydown.Web.Forms;
using Microsoft.AspNetCore.Antiforgery;

namespace Laydown.Web.Press;

/// <summary>Forms of the stock room, plain, so that they work without script; each ends with its page, with what was typed where it was refused.</summary>
public static class StockForms
{
    private const string Page = "~/stock";

    /// <summary>Takes the forms in and answers with labels.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/stock/receive", ReceiveAsync);
        routes.MapPost("/stock/lot", LotAsync);
        routes.MapPost("/stock/runs/{run}", RunAsync);
        routes.MapPost("/stock/reorder", ReorderAsync);
        routes.MapGet("/stock/labels.pdf", LabelsAsync);
    }

    private static Task<IResult> ReceiveAsync(HttpContext context, IAntiforgery guard, ShopServices shop, RefusedForms refused) =>
        DoAsync<StockChange>(context, guard, refused, StockFields.Receive, "lots", typed =>
        {
            GoodsIn goods = new(
                typed.Text("stock"), typed.Amount("quantity"), typed.Text("place"), typed.Text("by"), typed.TextOrNone("maker"), typed.NumberOrNone("width"), typed.NumberOrNone("length"));
            return () => shop.Press.Receive.ReceiveAsync(goods, context.RequestAborted);
        });

    private static Task<IResult> LotAsync(HttpContext context, IAntiforgery guard, ShopServices shop, TimeProvider clock, RefusedForms refused) =>
        DoAsync<StockChange>(context, guard, refused, StockFields.Lot, "lots", typed =>
        {
            StockMoveKind kind = typed.Text("kind") switch
            {
                "count" => StockMoveKind.Count,
                "consume" => StockMoveKind.Consume,
                "receive" => StockMoveKind.Receive,
                "place" => StockMoveKind.Place,
                var other => typed.Wrong("kind", other, "counted, taken, added or put elsewhere", StockMoveKind.Count),
            };
            bool puts = kind == StockMoveKind.Place;
            StockMove move = new(
                kind, typed.Text("lot"), puts ? 0 : typed.Amount("quantity"), clock.GetUtcNow(), typed.Text("by"), Why: typed.TextOrNone("why"), Place: puts ? typed.Text("place") : null);
            return () => shop.Press.Move.DoAsync(_ => Reading.Of<IReadOnlyList<StockMove>>([move]), context.RequestAborted);
        });

    private static Task<IResult> RunAsync(string run, HttpContext context, IAntiforgery guard, ShopServices shop, RefusedForms refused) =>
        DoAsync<StockChange>(context, guard, refused, StockFields.Run, "runs", typed =>
        {
            if (!Enum.TryParse(typed.Text("step"), ignoreCase: true, out RunStockStep step) || !Enum.IsDefined(step))
                typed.Wrong("step", typed.Text("step"), "reserve, release or take", step);
            return () => shop.Press.RunStock.DoAsync(run, step, typed.TextOrNone("by") ?? "operator", typed.Text("place"), context.RequestAborted);
        });

    private static Task<IResult> ReorderAsync(HttpContext context, IAntiforgery guard, ShopServices shop, RefusedForms refused) =>
        DoAsync<ReorderPoint>(context, guard, refused, StockFields.Reorder, "lines", typed =>
        {
            ReorderWish wish = new(typed.Text("stockId"), typed.CountOrNone("at"), typed.CountOrNone("to"), typed.Text("by"));
            return () => shop.Press.Reorder.SetAsync(wish, context.RequestAborted);
        });

    private static async Task<IResult> DoAsync<T>(
        HttpContext context, IAntiforgery guard, RefusedForms refused, FormFields fields, string place, Func<FormNumbers, Func<Task<Reading<T>>>> read)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        FormNumbers typed = new(form, "stock room");
        Func<Task<Reading<T>>> act = read(typed);
        IReadOnlyList<InputFault> faults = typed.Faults.Count > 0 ? [.. typed.Faults] : (await act()).Faults;
        return Results.LocalRedirect(faults.Count == 0
            ? Invariant($"{Page}#{place}") : Invariant($"{Page}?refused={refused.Keep(fields.Refused(name => form[name].FirstOrDefault(), faults))}#refused"));
    }

    private static async Task<IResult> LabelsAsync(string? lots, HttpRequest request, ShopServices shop, CancellationToken cancellation)
    {
        string[] ids = (lots ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return (await shop.Press.Labels.MakeAsync(ids, cancellation, Invariant($"{request.Scheme}://{request.Host}{request.PathBase}"))).Match(
            pdf => Results.File(pdf, "application/pdf", "stock-labels.pdf"), _ => Results.NotFound());
    }
}
