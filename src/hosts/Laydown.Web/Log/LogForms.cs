using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Shop;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;
using Laydown.Web.Forms;
using Microsoft.AspNetCore.Antiforgery;

namespace Laydown.Web.Log;

/// <summary>Forms at the press, plain ones that need no script: start, stop, measured values, remakes, notes.</summary>
public static class LogForms
{
    /// <summary>Takes the forms in; each ends with the page it came from, with what was typed where it was refused.</summary>
    public static void Map(IEndpointRouteBuilder routes) => routes.MapPost("/runs/{run}/log/{what}", KeepAsync);

    private static async Task<IResult> KeepAsync(string run, string what, HttpContext context, IAntiforgery guard, ShopServices shop, RefusedForms refused)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        if (shop.Log is not { } log || LogFields.OfRun(what) is not { } fields)
            return Results.NotFound();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        Reading<LogEntry> entry = EntryOf(run, what, form, shop.Catalogue);
        Reading<LogEntry> kept = entry.IsTaken ? await log.Keep.KeepAsync(entry.Value, context.RequestAborted) : entry;
        string page = Invariant($"~/runs/{Uri.EscapeDataString(run)}/log");
        return Results.LocalRedirect(kept.Match(
            done => Invariant($"{page}?kept={done.Number}#told"),
            faults => Invariant($"{page}?refused={refused.Keep(fields.Refused(name => form[name].FirstOrDefault(), faults))}#refused")));
    }

    private static Reading<LogEntry> EntryOf(string run, string what, IFormCollection form, Catalogue catalogue)
    {
        FormNumbers typed = new(form, "log");
        LogEntry bare = new(0, WhenOrNow(typed, catalogue), LogKind.Note, run, "", typed.Text("by"), typed.TextOrNone("note"));
        LogEntry entry = what switch
        {
            "start" => bare with { Kind = LogKind.Start },
            "stop" => bare with { Kind = LogKind.Stop, Stop = new(typed.Count("good"), typed.Count("spoiled"), typed.CountOrNone("made"), form["done"] == "yes", typed.NumberOrNone("ink")) },
            "thickness" => bare with { Kind = LogKind.Thickness, Thickness = new([.. Enumerable.Range(1, SheetThickness.Points).Select(i => typed.Number(Invariant($"p{i}")))]) },
            "ink" => bare with { Kind = LogKind.Ink, Ink = new(typed.Text("tank"), typed.Number("level")) },
            "colour" => bare with { Kind = LogKind.Colour, Colour = new(typed.Text("patch"), typed.Number("de"), typed.NumberOrNone("dl"), typed.NumberOrNone("da"), typed.NumberOrNone("db")) },
            "register" => bare with { Kind = LogKind.Register, Register = new(typed.Number("across"), typed.Number("along")) },
            "remake" => bare with { Kind = LogKind.Remake, Remake = Remake(typed) },
            "strike" => bare with { Kind = LogKind.Strike, Strikes = typed.Count("number") },
            _ => bare,
        };
        return typed.Faults.Count > 0 ? Reading.Refused<LogEntry>([.. typed.Faults]) : Reading.Of(entry);
    }

    // A cause nobody chose would stand first in the causes of the shop.
    private static RemakeNote Remake(FormNumbers typed) => new(
        Chosen(typed, "cause", RemakeCause.Other), Chosen(typed, "found", RemakeFound.Press), typed.TextOrNone("item"), typed.Count("pieces"), 0, 0, typed.NumberOrNone("minutes") ?? 0,
        Chosen(typed, "payer", RemakePayer.Shop), default, "", typed.TextOrNone("action"));

    private static T Chosen<T>(FormNumbers typed, string field, T instead)
        where T : struct, Enum =>
        Enum.TryParse(typed.Text(field), out T chosen) && Enum.IsDefined(chosen) ? chosen : typed.Wrong(field, typed.TextOrNone(field) ?? "nothing chosen", "one of the list", instead);

    private static DateTimeOffset WhenOrNow(FormNumbers typed, Catalogue catalogue) => typed.TextOrNone("at") is not { } text ? default
        : ShopTimes.Read(text, catalogue) ?? typed.Wrong("at", text, "a time such as 2026-11-26T09:30", default(DateTimeOffset));
}
