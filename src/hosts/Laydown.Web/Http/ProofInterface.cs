using System.Globalization;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Layers;
using Laydown.Shop.Proof;
using Microsoft.AspNetCore.Http.Features;

namespace Laydown.Web.Http;

/// <summary>What a customer's proof link opens: the tiles and still pictures of its one look, and a form for the answer. Nothing else of the shop.</summary>
public static class ProofInterface
{
    /// <summary>Most bytes of an answer's form.</summary>
    public const long MostFormBytes = 32 << 10;

    /// <summary>Answers below <c>/proof/{token}</c>; the page itself is a page.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder proof = routes.MapGroup("/proof/{token}").DisableAntiforgery();
        proof.MapGet("/" + LookTileAnswer.Pattern, (string token, string mark, int level, string place, ShopServices shop, HttpContext context, CancellationToken cancellation) =>
            WithLookAsync(token, shop, context, look => LookTileAnswer.TileAsync(look, mark, level, place, shop, context, cancellation), cancellation));
        proof.MapGet("/files/{name}", (string token, string name, ShopServices shop, HttpContext context, CancellationToken cancellation) =>
            WithLookAsync(token, shop, context, look => Task.FromResult(name is "day.png" or "night.png" ? LookTileAnswer.Picture(look, name, context) : LookTileAnswer.Nothing()), cancellation));
        proof.MapPost("/answer", AnswerAsync);

        // Whatever else is asked for below a link is nothing in a word, not the shop's own page of nothing.
        proof.MapGet("/{part}/{**rest}", (HttpContext context) =>
        {
            Private(context);
            return LookTileAnswer.Nothing();
        });
    }

    /// <summary>Headers of everything below a link: kept by nobody, found by no search.</summary>
    public static void Private(HttpContext context)
    {
        context.Response.Headers.CacheControl = "private, no-store";
        context.Response.Headers["X-Robots-Tag"] = "noindex, nofollow";
        context.Response.Headers["Referrer-Policy"] = "same-origin";
    }

    private static async Task<IResult> WithLookAsync(
        string token, ShopServices shop, HttpContext context, Func<StoredLook, Task<IResult>> answer, CancellationToken cancellation)
    {
        Private(context);
        ProofOutcome outcome = await shop.Proof.Open.OpenAsync(token, cancellation);
        if (outcome.Link is not { } link)
            return LookTileAnswer.Nothing(outcome.State is null ? StatusCodes.Status404NotFound : StatusCodes.Status410Gone);
        Reading<StoredLook> look = shop.Layers.ShowLook.Show(link.ItemId, link.LookId);
        return look.IsTaken ? await answer(look.Value) : LookTileAnswer.Nothing();
    }

    private static Task<IResult> AnswerAsync(string token, ShopServices shop, HttpContext context, CancellationToken cancellation)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = MostFormBytes;
        return WithLookAsync(token, shop, context, async look =>
        {
            if (await FormAsync(context, cancellation) is not { } form)
                return LookTileAnswer.Nothing(StatusCodes.Status400BadRequest);
            Reading<LightTable> table = shop.Proof.Tiles.Table(look.Record);
            if (!table.IsTaken)
                return LookTileAnswer.Nothing();
            Reading<ProofAnswer> kept = await shop.Proof.Answer.AnswerAsync(token, Reply(form), table.Value.FinishedMm, cancellation);
            string field = kept.Match(_ => "", faults => faults[0].Field);

            // See other: loading the page again does not send the answer again.
            context.Response.StatusCode = StatusCodes.Status303SeeOther;
            context.Response.Headers.Location = Invariant($"/proof/{Uri.EscapeDataString(token)}?{(kept.IsTaken ? "said=yes" : Invariant($"not={Uri.EscapeDataString(field)}"))}#answer");
            return Results.Empty;
        }, cancellation);
    }

    private static async Task<IFormCollection?> FormAsync(HttpContext context, CancellationToken cancellation)
    {
        if (!context.Request.HasFormContentType || context.Request.ContentLength is null or > MostFormBytes)
            return null;
        try
        {
            return await context.Request.ReadFormAsync(new FormOptions { ValueCountLimit = 16, KeyLengthLimit = 64, ValueLengthLimit = (int)MostFormBytes }, cancellation);
        }
        catch (Exception broken) when (broken is InvalidDataException or BadHttpRequestException)
        {
            return null;
        }
    }

    // What is neither of the words becomes a verdict that is refused.
    private static ProofReply Reply(IFormCollection form) => new(
        form["verdict"].ToString() switch { "approved" => ProofVerdict.Approved, "change" => ProofVerdict.Change, _ => (ProofVerdict)(-1) },
        form["from"].ToString(), form["text"].ToString(), Pin(form["x"].ToString(), form["y"].ToString(), form["view"].ToString()));

    private static ProofPin? Pin(string x, string y, string view)
    {
        if (x.Length == 0 && y.Length == 0)
            return null;
        PinView seen = view switch { "night" => PinView.Night, "day" => PinView.Day, _ => (PinView)(-1) };
        return new(Mm(x), Mm(y), seen);
    }

    private static double Mm(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out double mm) ? mm : double.NaN;
}
