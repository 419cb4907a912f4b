using System.Globalization;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Web.Http;

/// <summary>Made sheets over HTTP: what there is of one, tiles and pictures of it, what is at a place.</summary>
public static class SheetInterface
{
    private const string Tagged = "private, max-age=31536000, immutable";

    /// <summary>Answers below <c>/api/runs/{id}/sheets</c> and the tiles and pictures below <c>/runs/{id}/sheets</c>.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder api = routes.MapGroup("/api/runs/{id}/sheets/{number:int}").DisableAntiforgery();
        api.MapGet("/", SheetAsync);
        api.MapGet("/place", PlaceAsync);
        RouteGroupBuilder seen = routes.MapGroup("/runs/{id}/sheets/{number:int}/{files}/seen/{word}");
        seen.MapGet("/" + LookTileAnswer.Pattern, TileAsync);
        seen.MapGet("/whole.png", WholeAsync);
    }

    private static async Task<IResult> SheetAsync(string id, int number, string? files, ShopServices shop, CancellationToken cancellation) =>
        (await shop.Sheets.Open.OpenAsync(id, number, files, cancellation)).Match(
            opened => ShopInterface.Answer("press-sheet", new { opened.Sheet }), Refused);

    private static async Task<IResult> PlaceAsync(
        string id, int number, string? files, double? xMm, double? yMm, int? x, int? y, int? level, ShopServices shop, CancellationToken cancellation)
    {
        Reading<OpenedSheet> opened = await shop.Sheets.Open.OpenAsync(id, number, files, cancellation);
        if (!opened.IsTaken)
            return Refused(opened.Faults);
        Reading<SheetPlace> place = x is { } column && y is { } row
            ? await shop.Sheets.Read.AtPxAsync(opened.Value, column, row, level ?? 0, cancellation)
            : await shop.Sheets.Read.AtMmAsync(opened.Value, xMm ?? -1, yMm ?? -1, level ?? 0, cancellation);
        return place.Match(p => ShopInterface.Answer("sheet-place", p), Refused);
    }

    // A tile's address names the very files and optics: whoever asked may keep it for good.
    private static async Task<IResult> TileAsync(
        string id, int number, string files, string word, string mark, int level, string place, ShopServices shop, HttpContext context, CancellationToken cancellation)
    {
        bool png = place.EndsWith(".png", StringComparison.Ordinal);
        string[] parts = (png ? place[..^4] : place).Split('-');
        Reading<(OpenedSheet Opened, SheetSeen Seen)> seen = await SeenAsync(id, number, files, word, shop, cancellation);
        if (!seen.IsTaken || seen.Value.Opened.Sheet.Mark != mark || parts.Length != 2 || !Number(parts[0], out int column) || !Number(parts[1], out int row))
            return LookTileAnswer.Nothing();
        string tag = Invariant($"\"{mark}-{seen.Value.Seen.Word}-{level}-{place}\"");
        if (context.Request.Headers.IfNoneMatch == tag)
            return Results.StatusCode(StatusCodes.Status304NotModified);
        Reading<byte[]> tile = png
            ? await shop.Sheets.Draw.TilePngAsync(seen.Value.Opened, seen.Value.Seen, level, column, row, cancellation)
            : await shop.Sheets.Draw.TileAsync(seen.Value.Opened, seen.Value.Seen, level, column, row, cancellation);
        return tile.Match(bytes => Kept(bytes, png ? "image/png" : "application/octet-stream", tag, context), Drawn);
    }

    private static async Task<IResult> WholeAsync(
        string id, int number, string files, string word, ShopServices shop, HttpContext context, CancellationToken cancellation)
    {
        Reading<(OpenedSheet Opened, SheetSeen Seen)> seen = await SeenAsync(id, number, files, word, shop, cancellation);
        if (!seen.IsTaken)
            return LookTileAnswer.Nothing();
        string tag = Invariant($"\"{seen.Value.Opened.Sheet.Mark}-{seen.Value.Seen.Word}-whole\"");
        if (context.Request.Headers.IfNoneMatch == tag)
            return Results.StatusCode(StatusCodes.Status304NotModified);
        return (await shop.Sheets.Draw.WholePngAsync(seen.Value.Opened, seen.Value.Seen, cancellation)).Match(
            bytes =>
            {
                IResult answer = Kept(bytes, "image/png", tag, context);
                context.Response.Headers.CacheControl = "private, no-cache";
                return answer;
            },
            Drawn);
    }

    private static async Task<Reading<(OpenedSheet Opened, SheetSeen Seen)>> SeenAsync(
        string id, int number, string files, string word, ShopServices shop, CancellationToken cancellation) =>
        (await shop.Sheets.Open.OpenAsync(id, number, files, cancellation)).Then(opened =>
            SheetSeen.Parse(word, opened.Sheet).Then(seen => Reading.Of((opened, seen))));

    private static IResult Kept(byte[] bytes, string type, string tag, HttpContext context)
    {
        context.Response.Headers.CacheControl = Tagged;
        return Results.Bytes(bytes, type, entityTag: new(tag));
    }

    private static IResult Refused(IReadOnlyList<InputFault> faults) =>
        ShopInterface.Answer("faults", new { Faults = faults }, StatusCodes.Status404NotFound);

    // Too many at once is told apart, so that a screen asks again a little later.
    private static IResult Drawn(IReadOnlyList<InputFault> faults) =>
        LookTileAnswer.Nothing(faults[0].Field == DrawSheet.BusyField ? StatusCodes.Status503ServiceUnavailable : StatusCodes.Status404NotFound);

    private static bool Number(string text, out int number) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);
}
