using System.Globalization;
using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Shop;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;
using Microsoft.AspNetCore.Antiforgery;

namespace Laydown.Web.Log;

/// <summary>Forms at the press, plain ones that need no script: start, stop, measured values, remakes, notes.</summary>
public static class LogForms
{
    /// <summary>Takes the forms in; each ends with the page it came from.</summary>
    public static void Map(IEndpointRouteBuilder routes) => routes.MapPost("/runs/{run}/log/{what}", KeepAsync);

    private static async Task<IResult> KeepAsync(string run, string what, HttpContext context, IAntiforgery guard, ShopServices shop)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        if (shop.Log is not { } log)
            return Results.NotFound();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        Reading<LogEntry> entry = EntryOf(run, what, form, shop.Catalogue);
        Reading<LogEntry> kept = entry.IsTaken ? await log.Keep.KeepAsync(entry.Value, context.RequestAborted) : entry;
        string page = Invariant($"~/runs/{Uri.EscapeDataString(run)}/log");
        return Results.LocalRedirect(kept.Match(
            done => Invariant($"{page}?kept={done.Number}#told"), faults => Invariant($"{page}?not={Uri.EscapeDataString(faults[0].ToString())}#told")));
    }

    private static Reading<LogEntry> EntryOf(string run, string what, IFormCollection form, Catalogue catalogue)
    {
        FormNumbers numbers = new(form);
        LogEntry bare = new(0, numbers.WhenOrNow(catalogue), LogKind.Note, run, "", form["by"].ToString().Trim(), form["note"].ToString().Trim() is { Length: > 0 } note ? note : null);
        LogEntry? entry = what switch
        {
            "start" => bare with { Kind = LogKind.Start },
            "stop" => bare with { Kind = LogKind.Stop, Stop = new(numbers.Count("good"), numbers.Count("spoiled"), numbers.CountOrNone("made"), form["done"] == "yes", numbers.NumberOrNone("ink")) },
            "thickness" => bare with { Kind = LogKind.Thickness, Thickness = new([.. Enumerable.Range(1, SheetThickness.Points).Select(i => numbers.Number(Invariant($"p{i}")))]) },
            "ink" => bare with { Kind = LogKind.Ink, Ink = new(form["tank"].ToString(), numbers.Number("level")) },
            "colour" => bare with { Kind = LogKind.Colour, Colour = new(form["patch"].ToString(), numbers.Number("de"), numbers.NumberOrNone("dl"), numbers.NumberOrNone("da"), numbers.NumberOrNone("db")) },
            "register" => bare with { Kind = LogKind.Register, Register = new(numbers.Number("across"), numbers.Number("along")) },
            "remake" => bare with { Kind = LogKind.Remake, Remake = Remake(form, numbers) },
            "note" => bare,
            "strike" => bare with { Kind = LogKind.Strike, Strikes = numbers.Count("number") },
            _ => null,
        };
        if (entry is null)
            return Reading.Refused<LogEntry>(new InputFault("log", null, "form", what, "a form of the page"));
        return numbers.Faults.Count > 0 ? Reading.Refused<LogEntry>(numbers.Faults) : Reading.Of(entry);
    }

    private static RemakeNote Remake(IFormCollection form, FormNumbers numbers) => new(
        numbers.Cause(), Enum.TryParse(form["found"].ToString(), out RemakeFound found) ? found : RemakeFound.Press,
        form["item"].ToString() is { Length: > 0 } item ? item : null, numbers.Count("pieces"), 0, 0, numbers.NumberOrNone("minutes") ?? 0,
        Enum.TryParse(form["payer"].ToString(), out RemakePayer payer) ? payer : RemakePayer.Shop, default, "", form["action"].ToString() is { Length: > 0 } action ? action : null);

    /// <summary>Numbers of a form; what cannot be read is kept as a fault. A comma counts as a point.</summary>
    private sealed class FormNumbers(IFormCollection form)
    {
        public List<InputFault> Faults { get; } = [];

        public int Count(string field) => CountOrNone(field) ?? Missing(field, 0);

        public int? CountOrNone(string field)
        {
            string text = form[field].ToString().Trim();
            if (text.Length == 0)
                return null;
            return int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int count) ? count : Wrong(field, text, "a whole number", 0);
        }

        public double Number(string field) => NumberOrNone(field) ?? Missing(field, 0.0);

        public double? NumberOrNone(string field)
        {
            string text = form[field].ToString().Trim();
            if (text.Length == 0)
                return null;
            bool read = double.TryParse(text.Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out double number);
            return read ? number : Wrong(field, text, "a number", 0.0);
        }

        // A cause nobody chose would stand first in the causes of the shop.
        public RemakeCause Cause() => Enum.TryParse(form["cause"].ToString(), out RemakeCause cause) ? cause : Wrong("cause", "nothing chosen", "a cause of the list", RemakeCause.Other);

        public DateTimeOffset WhenOrNow(Catalogue catalogue)
        {
            string text = form["at"].ToString().Trim();
            return text.Length == 0 ? default : ShopTimes.Read(text, catalogue) ?? Wrong("at", text, "a time such as 2026-11-26T09:30", default(DateTimeOffset));
        }

        private T Missing<T>(string field, T instead) => Wrong(field, "nothing", "a number", instead);

        private T Wrong<T>(string field, string found, string wanted, T instead)
        {
            Faults.Add(new("log", null, field, found, wanted));
            return instead;
        }
    }
}
