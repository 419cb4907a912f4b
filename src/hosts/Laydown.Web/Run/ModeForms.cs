using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop;
using Laydown.Shop.Run;
using Microsoft.AspNetCore.Antiforgery;

namespace Laydown.Web.Run;

/// <summary>Taking another mode for a run, as a plain form.</summary>
internal static class ModeForms
{
    /// <summary>Takes the form in; it ends with the run's page.</summary>
    public static void Map(IEndpointRouteBuilder routes) => routes.MapPost("/runs/{id}/mode", TakeAsync);

    private static async Task<IResult> TakeAsync(string id, HttpContext context, IAntiforgery guard, ShopServices shop, RefusedWishes<ModeOverrule> desk)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        if (await shop.Store.RunAsync(id, context.RequestAborted) is null)
            return Results.NotFound();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        ModeOverrule? wish = form["mode"].ToString() is { Length: > 0 } mode ? new(mode, form["by"].ToString(), form["reason"].ToString()) : null;
        Reading<RunRecord> done = await shop.ChooseMode.ChooseAsync(id, wish, context.RequestAborted);
        if (done.IsTaken || wish is null)
            desk.Clear(id);
        else
            desk.Keep(id, wish, done.Faults);
        return Results.LocalRedirect(Invariant($"~/runs/{Uri.EscapeDataString(id)}#mode"));
    }
}
