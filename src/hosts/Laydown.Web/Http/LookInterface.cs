using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Layers;

namespace Laydown.Web.Http;

/// <summary>Looks over HTTP: what there are, what a place of one is like, the light of its tiles.</summary>
public static class LookInterface
{
    /// <summary>Answers below <c>/api/looks</c> and the tiles and pictures below <c>/looks</c>.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder api = routes.MapGroup("/api/looks").DisableAntiforgery();
        api.MapGet("/{item}", (string item, ShopServices shop) => ShopInterface.Answer("looks", new { Looks = shop.Layers.ListLooks.List(item) }));
        api.MapGet("/{item}/{look}", (string item, string look, ShopServices shop) => Told("look", shop.Layers.ShowLook.Show(item, look).Then(l =>
            shop.Proof.Tiles.Table(l.Record).Then(table => Reading.Of(new { Look = l.Record, Table = table })))));
        api.MapGet("/{item}/{look}/point", (string item, string look, int? x, int? y, ShopServices shop) => Told(
            "point", shop.Layers.ShowLook.Show(item, look).Then(l => shop.Proof.Point.At(l, x ?? -1, y ?? -1))));
        api.MapGet("/{item}/answers", async (string item, ShopServices shop, CancellationToken cancellation) =>
            ShopInterface.Answer("proof-answers", await shop.Proof.Answers.ShowAsync(item, cancellation)));
        routes.MapGet("/looks/{item}/{look}/" + LookTileAnswer.Pattern, TileAsync);
        routes.MapGet("/looks/{item}/{look}/files/{name}", (string item, string look, string name, ShopServices shop, HttpContext context) =>
            shop.Layers.ShowLook.Show(item, look).Match(l => LookTileAnswer.Picture(l, name, context), _ => LookTileAnswer.Nothing()));
    }

    private static async Task<IResult> TileAsync(
        string item, string look, string mark, int level, string place, ShopServices shop, HttpContext context, CancellationToken cancellation)
    {
        Reading<StoredLook> stored = shop.Layers.ShowLook.Show(item, look);
        return stored.IsTaken ? await LookTileAnswer.TileAsync(stored.Value, mark, level, place, shop, context, cancellation) : LookTileAnswer.Nothing();
    }

    private static IResult Told<T>(string schema, Reading<T> reading)
        where T : notnull => reading.Match(
            value => ShopInterface.Answer(schema, value), faults => ShopInterface.Answer("faults", new { Faults = faults }, StatusCodes.Status404NotFound));
}
