using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Colour;
using Laydown.Shop.Run;

namespace Laydown.Web.Http;

/// <summary>Passes of runs and their bands: pictures for the page, figures as JSON.</summary>
public static class PassesInterface
{
    private const int Wide = 360, High = 360, Dots = 48, Enlarged = 6;

    private const double PixelsPerMm = 4;

    /// <summary>Answers.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/runs/{id}/bands.png", BandsAsync);
        routes.MapGet("/runs/{id}/passes/{pass:int}.png", PassAsync);
        routes.MapGet("/api/runs/{id}/passes", FiguresAsync);
    }

    private static async Task<IResult> BandsAsync(string id, double? times, ShopServices shop, HttpContext context, CancellationToken cancellation)
    {
        double strong = times ?? 1;
        if (shop.Pictures is null || !(strong is >= 0 and <= 100))
            return Results.NotFound();
        Reading<PassesWish> wish = await shop.Passes.WishOfAsync(id, cancellation);
        Reading<RgbPicture> picture = await Task.Run(() => wish.Then(w => shop.Passes.Preview(w, strong, Wide, High, PixelsPerMm)), cancellation);
        return Picture(picture, shop, context);
    }

    // With the name of a dot file of the run its dots, from the middle of the sheet; else those of a solid.
    private static async Task<IResult> PassAsync(string id, int pass, string? dots, ShopServices shop, HttpContext context, CancellationToken cancellation)
    {
        Reading<PassesWish> wish = await shop.Passes.WishOfAsync(id, cancellation);
        if (shop.Pictures is null || !wish.IsTaken)
            return Results.NotFound();
        RunRecord run = wish.Value.Run!;
        ManifestEntry? file = run.Files.FirstOrDefault(f => f.What == "dots" && f.Name == dots);
        if (dots is not null && file is null)
            return Results.NotFound();
        int layer = ShowPasses.PlaceInFace(wish.Value, (file?.Layer ?? 1) - 1);
        string? folder = file is null || run.FolderName is null ? null : Path.Combine(new ShopFolder(shop.Folder).Runs, run.FolderName);
        Reading<RgbPicture> picture = ShowPasses.PlanOf(wish.Value, (file?.Layer ?? 1) - 1).Then(plan => pass >= 0 && pass < plan.Head.Passes
            ? shop.Passes.Pass(plan, layer, pass, file is null ? 0 : plan.Rows / 2, Dots, folder, file?.Name, file is null ? 0 : MiddleColumn(wish.Value))
            : Reading.Refused<RgbPicture>(new InputFault(id, null, "pass", Invariant($"{pass}"), Invariant($"0 to {plan.Head.Passes - 1}"))));
        return Picture(picture.Then(p => Reading.Of(Larger(p))), shop, context);
    }

    private static int MiddleColumn(PassesWish wish) => (int)(wish.Sheet.WidthMm / 2 * wish.Mode.ScanDpi / 25.4);

    private static async Task<IResult> FiguresAsync(string id, bool? scans, ShopServices shop, CancellationToken cancellation)
    {
        Reading<PassesWish> wish = await shop.Passes.WishOfAsync(id, cancellation);
        Reading<PassesView> view = await Task.Run(() => wish.Then(w => shop.Passes.Show(w)), cancellation);
        return view.Match(
            v => ShopInterface.Answer("passes", new { View = v, Scans = scans == true ? v.Faces.Select(f => f.Plan().Scans()) : null }),
            faults => ShopInterface.Answer("faults", new { Faults = faults }, StatusCodes.Status404NotFound));
    }

    private static IResult Picture(Reading<RgbPicture> picture, ShopServices shop, HttpContext context)
    {
        if (!picture.IsTaken)
            return Results.NotFound();
        context.Response.Headers.CacheControl = "private, no-cache";
        return Results.Bytes(shop.Pictures!.Png(picture.Value), "image/png");
    }

    private static RgbPicture Larger(RgbPicture small)
    {
        byte[] pixels = new byte[small.Pixels.Length * Enlarged * Enlarged];
        int width = small.Width * Enlarged;
        for (int row = 0; row < small.Height * Enlarged; row++)
            for (int column = 0; column < width; column++)
                small.Pixels.AsSpan((((row / Enlarged) * small.Width) + (column / Enlarged)) * 3, 3).CopyTo(pixels.AsSpan(((row * width) + column) * 3));
        return new(width, small.Height * Enlarged, pixels);
    }
}
