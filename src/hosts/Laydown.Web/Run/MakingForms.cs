using Laydown.Shop;
using Laydown.Shop.Check;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Microsoft.AspNetCore.Antiforgery;

namespace Laydown.Web.Run;

/// <summary>Buttons of the pages as plain forms, so that they work without script: make, cancel, plan the day.</summary>
public static class MakingForms
{
    /// <summary>Takes the forms in; each ends with the page it came from.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/runs/{id}/make", (string id, HttpContext context, IAntiforgery guard, ShopServices shop, MakingDesk desk) =>
            ActAsync(id, context, guard, shop, () => desk.Start(id)));
        routes.MapPost("/runs/{id}/cancel", (string id, HttpContext context, IAntiforgery guard, ShopServices shop, MakingDesk desk) =>
            ActAsync(id, context, guard, shop, () => desk.Cancel(id)));
        routes.MapPost("/runs/{id}/dots", DotsAsync);
        ReleaseForms.Map(routes);
        ModeForms.Map(routes);
        routes.MapPost("/day/plan", PlanAsync);
    }

    private static async Task<IResult> DotsAsync(string id, HttpContext context, IAntiforgery guard, ShopServices shop, MakingDesk desk)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        return DotWords.Wish(form["packing"].ToString(), form["screen"].ToString()) is { } wish
            ? await ActAsync(id, context, guard, shop, () => desk.StartDots(id, wish))
            : Results.BadRequest();
    }

    private static async Task<IResult> ActAsync(string id, HttpContext context, IAntiforgery guard, ShopServices shop, Func<bool> act)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        if (await shop.Store.RunAsync(id, context.RequestAborted) is null)
            return Results.NotFound();
        act();
        return Results.LocalRedirect(Invariant($"~/runs/{Uri.EscapeDataString(id)}#make"));
    }

    private static async Task<IResult> PlanAsync(HttpContext context, IAntiforgery guard, ShopServices shop, TimeProvider clock)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        await PlanDayAsync(shop, clock, context.RequestAborted);
        return Results.LocalRedirect("~/");
    }

    /// <summary>Takes orders in, checks what waits and plans what is ready.</summary>
    public static async Task<PlannedDay> PlanDayAsync(ShopServices shop, TimeProvider clock, CancellationToken cancellation)
    {
        TakenOrders taken = await shop.TakeOrders.TakeAsync(cancellation);
        CheckedItems looked = await shop.CheckItems.CheckAsync(cancellation);
        PlannedRuns planned = await shop.PlanRuns.PlanAsync(DateOnly.FromDateTime(clock.GetLocalNow().Date), cancellation);
        return new(
            taken.Orders.Count, taken.Refused.Count, looked.Items.Count, looked.Stopped + planned.Held.Count,
            [.. planned.Runs.Select(r => r.Run.Id)]);
    }
}
