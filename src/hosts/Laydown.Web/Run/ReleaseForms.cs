using System.Globalization;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop;
using Laydown.Shop.Run;
using Microsoft.AspNetCore.Antiforgery;

namespace Laydown.Web.Run;

/// <summary>Letting a run go, taking that back, and signing its first piece off, as plain forms.</summary>
internal static class ReleaseForms
{
    /// <summary>Takes the forms in; each ends with the set-up page.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/runs/{id}/release", ReleaseAsync);
        routes.MapPost("/runs/{id}/release/back", BackAsync);
        routes.MapPost("/runs/{id}/first-piece", FirstPieceAsync);
    }

    private static async Task<IResult> ReleaseAsync(string id, HttpContext context, IAntiforgery guard, ShopServices shop, RefusedWishes<MeasuredSheet> desk)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        if (await shop.Store.RunAsync(id, context.RequestAborted) is null)
            return Results.NotFound();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        MeasuredSheet typed = new(
            [.. form["thickness"].Take(20).Select(Number)], Number(form["edge"].ToString()), form["by"].ToString(), form["checkedBy"].ToString(),
            Number(form["checked"].ToString()), form["seen"] == "yes");
        Reading<RunRecord> done = await shop.Release.ReleaseAsync(id, typed, context.RequestAborted);
        if (done.IsTaken)
            desk.Clear(id);
        else
            desk.Keep(id, typed, done.Faults);
        return Page(id);
    }

    private static async Task<IResult> BackAsync(string id, HttpContext context, IAntiforgery guard, ShopServices shop, RefusedWishes<MeasuredSheet> desk)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        if (await shop.Store.RunAsync(id, context.RequestAborted) is null)
            return Results.NotFound();
        await shop.Release.TakeBackAsync(id, context.RequestAborted);
        desk.Clear(id);
        return Page(id);
    }

    private static async Task<IResult> FirstPieceAsync(string id, HttpContext context, IAntiforgery guard, ShopServices shop, RefusedWishes<FirstPieceApproval> desk)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        if (shop.FirstPiece is null || await shop.Store.RunAsync(id, context.RequestAborted) is null)
            return Results.NotFound();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        FirstPieceApproval typed = new(
            [.. form["made"].Take(100).Select(n => int.TryParse(n, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : 0)], form["by"].ToString(), form["notes"].ToString());
        Reading<ApprovedPiece> done = await shop.FirstPiece.ApproveAsync(id, typed, context.RequestAborted);
        if (done.IsTaken)
            desk.Clear(id);
        else
            desk.Keep(id, typed, done.Faults);
        return Results.LocalRedirect(Invariant($"~/runs/{Uri.EscapeDataString(id)}/set-up#first-piece"));
    }

    private static IResult Page(string id) => Results.LocalRedirect(Invariant($"~/runs/{Uri.EscapeDataString(id)}/set-up#let-go"));

    // What is no number becomes one that no sheet has, so that the check names the field.
    private static double Number(string? text) =>
        double.TryParse((text ?? "").Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value) ? value : -1;
}
