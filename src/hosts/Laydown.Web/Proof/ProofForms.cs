using System.Globalization;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Proof;
using Microsoft.AspNetCore.Antiforgery;

namespace Laydown.Web.Proof;

/// <summary>Buttons of the shop's own pages about proofs, as plain forms: send a link, withdraw it, mark an answer as dealt with, choose the look an item is printed from.</summary>
public static class ProofForms
{
    /// <summary>Takes the forms in; each ends with the page it came from.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/looks/{item}/{look}/link", LinkAsync);
        routes.MapPost("/looks/{item}/{look}/choose", ChooseAsync);
        routes.MapPost("/looks/{item}/{look}/withdraw/{link}", WithdrawAsync);
        routes.MapPost("/looks/{item}/{look}/answers/{answer}", SettleAsync);
    }

    private static async Task<IResult> LinkAsync(string item, string look, HttpContext context, IAntiforgery guard, ShopServices shop)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        _ = int.TryParse(form["days"], NumberStyles.None, CultureInfo.InvariantCulture, out int days);
        Reading<SentLink> made = await shop.Proof.MakeLink.MakeAsync(item, look, days, form["for"].ToString(), context.RequestAborted);
        return made.IsTaken ? Back(item, look, "proof") : Results.LocalRedirect(Invariant($"{Page(item, look)}?link={Uri.EscapeDataString(made.Faults[0].Field)}#proof"));
    }

    private static async Task<IResult> ChooseAsync(string item, string look, HttpContext context, IAntiforgery guard, ShopServices shop)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        Reading<Laydown.Shop.Orders.ItemRecord> chosen = await shop.Layers.ChooseLook.ChooseAsync(item, look, context.RequestAborted);
        return chosen.IsTaken ? Back(item, look, "print") : Results.LocalRedirect(Invariant($"{Page(item, look)}?choose={Uri.EscapeDataString(chosen.Faults[0].ToString())}#print"));
    }

    private static async Task<IResult> WithdrawAsync(string item, string look, string link, HttpContext context, IAntiforgery guard, ShopServices shop)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        Reading<ProofLink> gone = await shop.Proof.RevokeLink.RevokeAsync(link, context.RequestAborted);
        return gone.IsTaken ? Back(item, look, "proof") : Results.NotFound();
    }

    private static async Task<IResult> SettleAsync(string item, string look, string answer, HttpContext context, IAntiforgery guard, ShopServices shop)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        return await shop.Proof.Settle.SettleAsync(item, answer, form["done"] == "yes", context.RequestAborted) ? Back(item, look, "answers") : Results.NotFound();
    }

    private static string Page(string item, string look) => Invariant($"~/looks/{Uri.EscapeDataString(item)}/{Uri.EscapeDataString(look)}");

    private static IResult Back(string item, string look, string place) => Results.LocalRedirect(Invariant($"{Page(item, look)}#{place}"));
}
