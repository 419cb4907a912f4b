using System.Globalization;
using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Shop;
using Laydown.Web.Forms;
using Microsoft.AspNetCore.Antiforgery;

namespace Laydown.Web.Log;

/// <summary>Forms of overhead, plain ones that need no script; each ends with the page it came from.</summary>
public static class OverheadForms
{
    /// <summary>Takes the forms in.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/log/overhead/spent", (string? from, string? to, string? count, HttpContext context, IAntiforgery guard, ShopServices shop, TimeProvider clock, RefusedForms refused) =>
            KeepAsync(Page(from, to, count), LogFields.Spent, context, guard, shop, refused, typed => Spent(typed, clock)));
        routes.MapPost("/log/overhead/strike", (string? from, string? to, string? count, HttpContext context, IAntiforgery guard, ShopServices shop, RefusedForms refused) =>
            KeepAsync(Page(from, to, count), LogFields.Strike, context, guard, shop, refused, Struck));
    }

    /// <summary>A day such as <c>2026-11-26</c>; null for anything else.</summary>
    internal static DateOnly? Day(string? text) => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;

    private static LogEntry Spent(FormNumbers typed, TimeProvider clock)
    {
        DateOnly today = DateOnly.FromDateTime(clock.GetLocalNow().Date), day = typed.DayOrNone("day") ?? today;
        DateTime noon = day.ToDateTime(new TimeOnly(12, 0));
        return new(0, day == today ? default : new(noon, clock.LocalTimeZone.GetUtcOffset(noon)), LogKind.Overhead, null, "", typed.Text("by"),
            Overhead: new(typed.Text("kind"), Money.FromUnits(typed.Amount("amount")), typed.Text("what")));
    }

    private static LogEntry Struck(FormNumbers typed) =>
        new(0, default, LogKind.Strike, null, "", typed.Text("by"), typed.Text("note"), Strikes: typed.Count("number"));

    private static async Task<IResult> KeepAsync(
        string page, FormFields fields, HttpContext context, IAntiforgery guard, ShopServices shop, RefusedForms refused, Func<FormNumbers, LogEntry> entry)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        if (shop.Log is not { } log)
            return Results.NotFound();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        FormNumbers typed = new(form, "log");
        LogEntry told = entry(typed);
        Reading<LogEntry> kept = typed.Faults.Count > 0 ? Reading.Refused<LogEntry>([.. typed.Faults]) : await log.Keep.KeepAsync(told, context.RequestAborted);
        return Results.LocalRedirect(kept.Match(
            _ => page + "#spent", faults => Invariant($"{page}&refused={refused.Keep(fields.Refused(name => form[name].FirstOrDefault(), faults))}#refused")));
    }

    private static string Page(string? from, string? to, string? count) =>
        Invariant($"~/log/overhead?from={Day(from):yyyy-MM-dd}&to={Day(to):yyyy-MM-dd}&count={(count == "due" ? "due" : "done")}");
}
