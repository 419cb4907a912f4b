using System.Globalization;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Week;
using Microsoft.AspNetCore.Antiforgery;

namespace Laydown.Web.Week;

/// <summary>Changes to the week as plain forms, so that they work without script.</summary>
public static class WeekForms
{
    /// <summary>Takes the forms in; each ends with the week.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/week/put", (HttpContext context, IAntiforgery guard, ShopServices shop) => ActAsync(context, guard, f =>
            DateTime.TryParse(f["at"].ToString(), CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime at)
                ? shop.Week.PinAsync(f["run"].ToString(), at, context.RequestAborted)
                : Task.FromResult(Reading.Refused<WeekView>(new InputFault("week", null, "at", f["at"].ToString(), "a day and a time")))));
        routes.MapPost("/week/back", (HttpContext context, IAntiforgery guard, ShopServices shop) => ActAsync(context, guard, _ => shop.Week.BackAsync(context.RequestAborted)));
        routes.MapPost("/week/let", (HttpContext context, IAntiforgery guard, ShopServices shop) =>
            ActAsync(context, guard, f => shop.Week.UnpinAsync(f["run"].ToString(), context.RequestAborted)));
        routes.MapPost("/week/lock", (HttpContext context, IAntiforgery guard, ShopServices shop) =>
            ActAsync(context, guard, f => shop.Week.LockAsync([.. f["run"].OfType<string>()], context.RequestAborted)));
        routes.MapPost("/week/unlock", (HttpContext context, IAntiforgery guard, ShopServices shop) =>
            ActAsync(context, guard, f => shop.Week.UnlockAsync(f["run"].ToString(), context.RequestAborted)));
    }

    private static async Task<IResult> ActAsync(HttpContext context, IAntiforgery guard, Func<IFormCollection, Task<Reading<WeekView>>> act)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        Reading<WeekView> done = await act(await context.Request.ReadFormAsync(context.RequestAborted));
        return Results.LocalRedirect(done.IsTaken ? "~/week?as=kept" : Invariant($"~/week?as=kept&refused={Uri.EscapeDataString(done.Faults[0].ToString())}"));
    }
}
