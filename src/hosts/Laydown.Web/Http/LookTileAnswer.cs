using System.Globalization;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Layers;
using Laydown.Shop.Proof;

namespace Laydown.Web.Http;

/// <summary>Tiles and pictures of a look, the same for the shop's own pages and for a customer's proof.</summary>
internal static class LookTileAnswer
{
    /// <summary>Part of an address that names a tile.</summary>
    public const string Pattern = "tiles/{mark}/{level:int}/{place}";

    /// <summary>A tile, kept for good by whoever asked: its address names the very planes and lights.</summary>
    public static async Task<IResult> TileAsync(
        StoredLook look, string mark, int level, string place, ShopServices shop, HttpContext context, CancellationToken cancellation)
    {
        string[] parts = place.Split('-');
        Reading<LightTable> table = shop.Proof.Tiles.Table(look.Record);
        if (!table.IsTaken || table.Value.Mark != mark || parts.Length != 2 || !Number(parts[0], out int column) || !Number(parts[1], out int row))
            return Nothing();
        byte[]? tile = await shop.Proof.Tiles.TileAsync(look, level, column, row, cancellation);
        if (tile is null)
            return Nothing();
        context.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        return Results.Bytes(tile, "application/octet-stream");
    }

    /// <summary>A picture that the look's own record names.</summary>
    public static IResult Picture(StoredLook look, string name, HttpContext context)
    {
        LookFile? file = look.Record.Files.FirstOrDefault(f => f.Name == name && f.Name.EndsWith(".png", StringComparison.Ordinal));
        string path = Path.Combine(look.Folder, Path.GetFileName(file?.Name ?? "none"));
        if (file is null || !File.Exists(path))
            return Nothing();
        context.Response.Headers.CacheControl = "private, no-cache";
        return Results.File(path, "image/png", entityTag: new(Invariant($"\"{file.Sha256}\"")));
    }

    /// <summary>Nothing, said in a word, so that no page of the shop stands in its place.</summary>
    public static IResult Nothing(int status = StatusCodes.Status404NotFound) => Results.Text("Nothing here.", "text/plain; charset=utf-8", statusCode: status);

    private static bool Number(string text, out int number) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);
}
