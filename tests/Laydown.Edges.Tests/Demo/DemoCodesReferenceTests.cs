using Laydown.Cli;
using Laydown.Demo;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using NetVips;
using ZXing;
using ZXing.Common;

namespace Laydown.Edges.Tests.Demo;

/// <summary>
/// The orders with codes go the whole way, from the files that came to the contone press files; then the inks of each piece are put together again
/// and ZXing, which knows nothing of the product, reads what is printed.
/// </summary>
public sealed class DemoCodesReferenceTests : IAsyncLifetime
{
    private readonly string folder = Path.Combine(Path.GetTempPath(), "laydown-codes-" + Guid.NewGuid().ToString("N"));
    private ShopServices shop = null!;
    private DayReport day = null!;

    public async ValueTask InitializeAsync()
    {
        DemoWorld.Write(folder, CancellationToken.None);
        foreach (string order in Directory.GetDirectories(Path.Combine(folder, "orders")))
            if (Path.GetFileName(order) is not ("TW-1041" or "TW-1047"))
                Directory.Delete(order, recursive: true);
        shop = (await Wiring.OpenAsync(folder, TimeProvider.System, CancellationToken.None)).Value;
        day = await new WorkDay(shop, TimeProvider.System).WorkAsync(DemoWorld.Day, null, CancellationToken.None);
    }

    public ValueTask DisposeAsync()
    {
        Directory.Delete(folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task Every_code_of_the_demo_is_read_from_the_press_files_on_every_piece()
    {
        // Stickers without a code share a roll with the labels.
        ItemRecord[] items = [.. (await shop.Store.OrdersAsync(CancellationToken.None)).SelectMany(o => o.Items).Where(i => i.Artwork?.Pages[0].Codes.Count > 0)];
        List<(string Item, string? Read)> pieces = [];
        foreach (RunRecord run in day.Runs)
            for (int sheet = 0; sheet < run.Run.Sheets.Count; sheet++)
                pieces.AddRange(ReadSheet(run, sheet, items));

        Assert.Equal((22, 22), (Count("TW-1041", _ => true), Count("TW-1041", text => text.StartsWith("https://saltmarsh-observatory.example/trail/", StringComparison.Ordinal))));
        Assert.NotEqual(0, Count("TW-1047", _ => true));
        Assert.All(pieces, piece => Assert.NotNull(piece.Read));

        // What is read is what the artwork was measured to say.
        foreach (ItemRecord item in items.Where(i => i.State == ItemState.Completed))
            Assert.Equal([Assert.Single(item.Artwork!.Pages[0].Codes).Text], pieces.Where(p => p.Item == item.Item.Id).Select(p => p.Read).Distinct());

        int Count(string order, Func<string, bool> text) => pieces.Count(p => p.Item.StartsWith(order, StringComparison.Ordinal) && p.Read is not null && text(p.Read));
    }

    private IEnumerable<(string Item, string? Read)> ReadSheet(RunRecord run, int sheet, IReadOnlyList<ItemRecord> items)
    {
        SheetLayout layout = run.Run.Sheets[sheet];
        string[] layers = Directory.GetFiles(Path.Combine(folder, "runs", run.FolderName!), Invariant($"sheet-{sheet + 1:00}-layer-*-colour.tif"));
        using Image inks = Image.NewFromFile(Assert.Single(layers));
        double pxPerMm = inks.Width / layout.Sheet.WidthMm;
        foreach (Placement placement in layout.Placements.Where(p => items.Any(i => i.Item.Id == p.PieceId)))
        {
            using Image piece = Crop(inks, placement.Place, layout.Sheet, pxPerMm);
            yield return (placement.PieceId, Read(piece));
        }
    }

    private static Image Crop(Image sheet, RectMm place, SizeMm size, double pxPerMm)
    {
        int left = (int)Math.Round(place.XMm * pxPerMm), top = (int)Math.Round((size.HeightMm - place.TopMm) * pxPerMm);
        return sheet.Crop(
            left, top, Math.Min((int)(place.WidthMm * pxPerMm), sheet.Width - left), Math.Min((int)(place.HeightMm * pxPerMm), sheet.Height - top));
    }

    /// <summary>Each ink takes its own primary away; light inks with three tenths of it.</summary>
    private static string? Read(Image inks)
    {
        byte[] pixels = inks.WriteToMemory<byte>();
        int bands = inks.Bands;
        byte[] rgb = new byte[inks.Width * inks.Height * 3];
        for (int pixel = 0; pixel < rgb.Length / 3; pixel++)
        {
            double black = 1 - (pixels[(pixel * bands) + 3] / 255.0);
            for (int primary = 0; primary < 3; primary++)
            {
                double ink = pixels[(pixel * bands) + primary] + (bands >= 6 && primary < 2 ? 0.3 * pixels[(pixel * bands) + 4 + primary] : 0);
                rgb[(pixel * 3) + primary] = (byte)Math.Clamp(255 * black * (1 - (ink / 255)), 0, 255);
            }
        }

        BarcodeReaderGeneric reader = new()
        {
            AutoRotate = true,
            Options = new DecodingOptions { TryHarder = true, PossibleFormats = [BarcodeFormat.EAN_13, BarcodeFormat.QR_CODE] },
        };
        return reader.Decode(new RGBLuminanceSource(rgb, inks.Width, inks.Height, RGBLuminanceSource.BitmapFormat.RGB24))?.Text;
    }
}
