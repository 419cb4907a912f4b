using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Colour;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Microsoft.Net.Http.Headers;

namespace Laydown.Web.Http;

/// <summary>Pictures and papers of the shop. Every path is made from the store's records; no part of an address becomes a path.</summary>
public static class ShopFiles
{
    private const int PreviewSidePx = 1400;

    /// <summary>Answers pictures of artwork pages, files of run folders and quotes.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/items/{id}/pages/{page:int}.png", PagePictureAsync);
        routes.MapGet("/runs/{id}/files/{name}", RunFileAsync);
        routes.MapGet("/runs/{id}/set-up.pdf", SetUpAsync);
        routes.MapGet("/quotes/{id}", QuoteAsync);
        routes.MapGet("/items/{id}/shift/{what}.png", ShiftPictureAsync);
        routes.MapGet("/charts/{id}/{name}", ChartFile);
    }

    private static async Task<IResult> PagePictureAsync(string id, int page, ShopServices shop, CancellationToken cancellation)
    {
        ItemRecord? item = await shop.Store.ItemAsync(id, cancellation);
        if (item?.Artwork is null || !item.Artwork.Pages.Any(p => p.Number == page))
            return Results.NotFound();

        string png = new ShopFolder(shop.Folder).Preview(item.Artwork.Sha256, page);
        if (!File.Exists(png))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(png)!);
            Reading<SizeMm> made = await shop.Renderer.PreviewAsync(item.FileOf(page).Path, item.FileOf(page).Page, PreviewSidePx, png, cancellation);
            if (!made.IsTaken)
                return Results.NotFound();
        }

        return Results.File(png, "image/png", lastModified: File.GetLastWriteTimeUtc(png));
    }

    private static async Task<IResult> SetUpAsync(string id, ShopServices shop, HttpContext context, CancellationToken cancellation)
    {
        Reading<byte[]> made = await shop.SetUpPaper.PdfAsync(id, cancellation);
        context.Response.Headers.ContentSecurityPolicy = SafeHeaders.PaperPolicy;
        return made.Match(bytes => Results.Bytes(bytes, "application/pdf"), _ => Results.NotFound());
    }

    private static async Task<IResult> RunFileAsync(string id, string name, ShopServices shop, HttpContext context, CancellationToken cancellation)
    {
        RunRecord? run = await shop.Store.RunAsync(id, cancellation);
        ManifestEntry? entry = run?.Files.FirstOrDefault(f => string.Equals(f.Name, name, StringComparison.Ordinal));
        if (entry is null || run?.FolderName is null || !IsPlain(entry.Name) || !IsPlain(run.FolderName))
            return Results.NotFound();
        string path = Path.Combine(new ShopFolder(shop.Folder).Runs, run.FolderName, entry.Name);
        if (!File.Exists(path))
            return Results.NotFound();

        // Papers and drawings are shown as such but may run nothing.
        context.Response.Headers.ContentSecurityPolicy = SafeHeaders.PaperPolicy;
        string type = TypeOf(entry.Name);
        bool shown = type.StartsWith("image/png", StringComparison.Ordinal) || type is "image/svg+xml" or "application/pdf" or "text/html; charset=utf-8";
        var tag = new EntityTagHeaderValue(Invariant($"\"{entry.Sha256}\""));
        return Results.File(path, type, shown ? null : entry.Name, entityTag: tag, enableRangeProcessing: true);
    }

    private static async Task<IResult> QuoteAsync(string id, string? breaks, ShopServices shop, CancellationToken cancellation)
    {
        Reading<Quote> quote = await shop.QuoteOrder.QuoteAsync(id, QuoteInterface.Quantities(breaks) ?? [], cancellation);
        if (!quote.IsTaken)
            return Results.NotFound();
        string path = Path.Combine(new ShopFolder(shop.Folder).Quotes, Invariant($"{QuoteOrder.FileNameOf(id)}.pdf"));
        return Results.File(await File.ReadAllBytesAsync(path, cancellation), "application/pdf");
    }

    private static async Task<IResult> ShiftPictureAsync(string id, string what, ShopServices shop, CancellationToken cancellation)
    {
        Reading<ItemShift> shift = await shop.Colour.MapShift.MapAsync(id, 1, null, cancellation);
        string? path = !shift.IsTaken ? null : what switch
        {
            "page" => shift.Value.PicturePath,
            "proof" => shift.Value.ProofPath,
            "map" => shift.Value.MapPath,
            _ => null,
        };
        return path is null || !File.Exists(path) ? Results.NotFound() : Results.File(path, "image/png", lastModified: File.GetLastWriteTimeUtc(path));
    }

    private static IResult ChartFile(string id, string name, ShopServices shop)
    {
        if (!IsPlain(id) || !IsPlain(name))
            return Results.NotFound();
        string path = Path.Combine(new ShopFolder(shop.Folder).Charts, id, name);
        return File.Exists(path) ? Results.File(path, TypeOf(name), name) : Results.NotFound();
    }

    private static bool IsPlain(string name) =>
        name.Length is > 0 and <= 200 && name is not ("." or "..") && string.Equals(Path.GetFileName(name), name, StringComparison.Ordinal);

    private static string TypeOf(string name) => Path.GetExtension(name) switch
    {
        ".png" => "image/png",
        ".svg" => "image/svg+xml",
        ".pdf" => "application/pdf",
        ".html" => "text/html; charset=utf-8",
        ".json" => "application/json",
        ".tif" => "image/tiff",
        _ => "application/octet-stream",
    };
}
