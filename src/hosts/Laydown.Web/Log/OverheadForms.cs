using System.Globalization;
using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Shop;
using Microsoft.AspNetCore.Antiforgery;

namespace Laydown.Web.Log;

/// <summary>Forms of overhead, plain ones that need no script; each ends with the page it came from.</summary>
public static class OverheadForms
{
    /// <summary>Takes the forms in.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/log/overhead/spent", (string? from, string? to, string? count, HttpContext context, IAntiforgery guard, ShopServices shop, TimeProvider clock) =>
            KeepAsync(Page(from, to, count), context, guard, shop, form => Spent(form, clock)));
        routes.MapPost("/log/overhead/strike", (string? from, string? to, string? count, HttpContext context, IAntiforgery guard, ShopServices shop) =>
            KeepAsync(Page(from, to, count), context, guard, shop, Struck));
    }

    /// <summary>A day such as <c>2026-11-26</c>; null for anything else.</summary>
    internal static DateOnly? Day(string? text) => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;

    private static LogEntry Spent(IFormCollection form, TimeProvider clock)
    {
        Money amount = decimal.TryParse(form["amount"].ToString().Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out decimal units) && Math.Abs(units) < 1e12m
            ? Money.FromUnits(units) : default;
        DateOnly today = DateOnly.FromDateTime(clock.GetLocalNow().Date), day = Day(form["day"].ToString()) ?? today;
        DateTime noon = day.ToDateTime(new TimeOnly(12, 0));
        return new(0, day == today ? default : new(noon, clock.LocalTimeZone.GetUtcOffset(noon)), LogKind.Overhead, null, "", form["by"].ToString().Trim(),
            Overhead: new(form["kind"].ToString(), amount, form["what"].ToString().Trim()));
    }

    private static LogEntry Struck(IFormCollection form) => new(
        0, default, LogKind.Strike, null, "", form["by"].ToString().Trim(), form["note"].ToString().Trim(),
        Strikes: long.TryParse(form["number"].ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out long number) ? number : null);

    private static async Task<IResult> KeepAsync(string page, HttpContext context, IAntiforgery guard, ShopServices shop, Func<IFormCollection, LogEntry> entry)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        if (shop.Log is not { } log)
            return Results.NotFound();
        Reading<LogEntry> kept = await log.Keep.KeepAsync(entry(await context.Request.ReadFormAsync(context.RequestAborted)), context.RequestAborted);
        return Results.LocalRedirect(kept.Match(_ => page + "#spent", faults => Invariant($"{page}&refused={Uri.EscapeDataString(faults[0].ToString())}")));
    }

    private static string Page(string? from, string? to, string? count) =>
        Invariant($"~/log/overhead?from={Day(from):yyyy-MM-dd}&to={Day(to):yyyy-MM-dd}&count={(count == "due" ? "due" : "done")}");
}
