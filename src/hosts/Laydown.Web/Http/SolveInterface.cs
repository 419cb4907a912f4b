using System.Globalization;
using System.Text.Json;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Layers;
using Laydown.Shop.Proof;
using Laydown.Web.Layers;
using Microsoft.AspNetCore.Antiforgery;

namespace Laydown.Web.Http;

/// <summary>Solving from the page: quick previews while dragging, the whole in the background, how far it is.</summary>
public static class SolveInterface
{
    /// <summary>Header of a preview that says what its bytes are.</summary>
    public const string PreviewHeader = "Laydown-Preview";

    /// <summary>Answers the preview, the state and the two buttons.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/looks/{item}/preview", PreviewAsync);
        routes.MapGet("/api/looks/{item}/solving", (string item, SolveDesk desk) =>
            ShopInterface.Answer("solving", desk.Of(item) ?? new SolveState(false, 0, "not started", null, [])));
        routes.MapPost("/looks/{item}/solve", SolveAsync);
        routes.MapPost("/looks/{item}/solve/cancel", CancelAsync);
    }

    /// <summary>What is asked for, as a form or an address says it.</summary>
    /// <param name="item">The item.</param>
    /// <param name="value">Gives the value of a field, empty when there is none.</param>
    /// <returns>The request, or the field that cannot be read.</returns>
    public static Reading<PanelRequest> Request(string item, Func<string, string> value)
    {
        List<InputFault> faults = [];
        double Number(string name, double usual, double least, double most)
        {
            string text = value(name);
            if (text.Length == 0)
                return usual;
            if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && number >= least && number <= most)
                return number;
            faults.Add(new("form", null, name, text.Length > 40 ? text[..40] : text, Invariant($"{least} to {most}")));
            return usual;
        }

        PairPlacing Placing(string name) => Enum.TryParse(value(name), ignoreCase: true, out PairPlacing placing) && Enum.IsDefined(placing) ? placing : PairPlacing.Careful;
        WhiteChoice white = Enum.TryParse(value("white"), ignoreCase: true, out WhiteChoice choice) && Enum.IsDefined(choice) ? choice : WhiteChoice.Fixed;
        double strength = Number("strength", 100, 1, 100) / 100;
        List<PairPoint> points = [];
        for (int i = 1; i <= 3; i++)
        {
            string[] names = [Invariant($"nx{i}"), Invariant($"ny{i}"), Invariant($"dx{i}"), Invariant($"dy{i}")];
            if (names.Any(n => value(n).Length > 0))
                points.Add(new(Number(names[0], 50, 0, 100), Number(names[1], 50, 0, 100), Number(names[2], 50, 0, 100), Number(names[3], 50, 0, 100), PairUnit.Percent));
        }

        PanelRequest usual = PanelRequest.OfItem(item);
        PanelRequest request = usual with
        {
            Ppi = Number("ppi", 100, 10, 300),
            Pair = new(new("", (int)Number("day", 1, 1, 500), null), new("", (int)Number("night", 2, 1, 500), null), Placing("dayplacing"), Placing("nightplacing"), points),
            Wish = LookWish.Usual with
            {
                NightWeight = Math.Pow(10, Number("weight", 0, -1, 1)),
                White = white,
                WhiteStrengths = white switch { WhiteChoice.Fixed => [strength], WhiteChoice.Stepped => [0.5, 0.75, 1], _ => [0.4, 1] },
                KeepContrast = value("contrast") != "no",
                ViewingDistanceMm = Number("distance", 2000, 200, 100_000),
            },
        };
        return faults.Count == 0 ? Reading.Of(request) : Reading.Refused<PanelRequest>(faults);
    }

    private static async Task<IResult> PreviewAsync(string item, HttpContext context, ShopServices shop, CancellationToken cancellation)
    {
        string Value(string name) => context.Request.Query[name].ToString();
        Reading<PanelRequest> request = Request(item, Value);
        if (!request.IsTaken)
            return ShopInterface.Answer("faults", new { request.Faults }, StatusCodes.Status400BadRequest);
        _ = double.TryParse(Value("lift"), NumberStyles.Float, CultureInfo.InvariantCulture, out double lift);
        double exposure = double.TryParse(Value("exposure"), NumberStyles.Float, CultureInfo.InvariantCulture, out double e) ? e : 0.7;
        int most = int.TryParse(Value("pixels"), NumberStyles.None, CultureInfo.InvariantCulture, out int p) ? Math.Clamp(p, 1000, PreviewPanel.MostPixels) : 400_000;
        LookWish wish = request.Value.Wish;
        Reading<DrawnPreview> drawn = await shop.Proof.Preview.DrawAsync(
            request.Value, new(wish.NightWeight, wish.WhiteStrengths[^1], lift, exposure), most, cancellation);
        if (!drawn.IsTaken)
            return ShopInterface.Answer("faults", new { drawn.Faults }, StatusCodes.Status400BadRequest);
        context.Response.Headers[PreviewHeader] = JsonSerializer.Serialize(drawn.Value.Size, ShopJson.Compact);
        context.Response.Headers.CacheControl = "private, no-store";
        return Results.Bytes(drawn.Value.Light, "application/octet-stream");
    }

    private static async Task<IResult> SolveAsync(string item, HttpContext context, IAntiforgery guard, ShopServices shop, SolveDesk desk)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        if (await shop.Store.ItemAsync(item, context.RequestAborted) is null)
            return Results.NotFound();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        Reading<PanelRequest> request = Request(item, name => form[name].ToString());
        if (!request.IsTaken)
            return Back(item, form["back"].ToString(), Invariant($"?field={Uri.EscapeDataString(request.Faults[0].Field)}"));
        desk.Start(request.Value);
        return Back(item, form["back"].ToString(), "");
    }

    private static async Task<IResult> CancelAsync(string item, HttpContext context, IAntiforgery guard, SolveDesk desk)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        desk.Cancel(item);
        return Back(item, form["back"].ToString(), "");
    }

    private static IResult Back(string item, string look, string query) => Results.LocalRedirect(
        Invariant($"~/looks/{Uri.EscapeDataString(item)}{(look.Length == 0 ? "" : "/" + Uri.EscapeDataString(look))}{query}#solve"));
}
