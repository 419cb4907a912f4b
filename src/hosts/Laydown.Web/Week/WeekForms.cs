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
        routes.MapPost("/week/press/{id}/take", PressAsync);
        routes.MapPost("/week/afresh", (HttpContext context, IAntiforgery guard, ShopServices shop) => ActAsync(context, guard, _ => shop.Week.AfreshAsync(context.RequestAborted)));
        routes.MapPost("/week/back", (HttpContext context, IAntiforgery guard, ShopServices shop) => ActAsync(context, guard, _ => shop.Week.BackAsync(context.RequestAborted)));
        routes.MapPost("/week/let", (HttpContext context, IAntiforgery guard, ShopServices shop) =>
            ActAsync(context, guard, f => shop.Week.UnpinAsync(f["run"].ToString(), context.RequestAborted)));
        routes.MapPost("/week/lock", (HttpContext context, IAntiforgery guard, ShopServices shop) =>
            ActAsync(context, guard, f => shop.Week.LockAsync([.. f["run"].OfType<string>()], context.RequestAborted)));
        routes.MapPost("/week/unlock", (HttpContext context, IAntiforgery guard, ShopServices shop) =>
            ActAsync(context, guard, f => shop.Week.UnlockAsync(f["run"].ToString(), context.RequestAborted)));
    }

    private static async Task<IResult> PressAsync(string id, HttpContext context, IAntiforgery guard, ShopServices shop)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        string wanted = form["at"].ToString();
        DateTime? at = DateTime.TryParse(wanted, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime time) ? time : null;
        Reading<WeekView> done = wanted.Length > 0 && at is null
            ? Reading.Refused<WeekView>(new InputFault(Invariant($"run {id}"), null, "at", wanted, "a day and a time, or nothing"))
            : await shop.Week.PutOnPressAsync(id, form["press"].ToString(), form["by"].ToString(), form["reason"].ToString(), at, context.RequestAborted);
        return Results.LocalRedirect(done.IsTaken ? "~/week?as=kept" : Invariant($"~/week/press/{Uri.EscapeDataString(id)}?refused={Uri.EscapeDataString(done.Faults[0].ToString())}"));
    }

    private static async Task<IResult> ActAsync(HttpContext context, IAntiforgery guard, Func<IFormCollection, Task<Reading<WeekView>>> act)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        Reading<WeekView> done = await act(await context.Request.ReadFormAsync(context.RequestAborted));
        return Results.LocalRedirect(done.IsTaken ? "~/week?as=kept" : Invariant($"~/week?as=kept&refused={Uri.EscapeDataString(done.Faults[0].ToString())}"));
    }
}
