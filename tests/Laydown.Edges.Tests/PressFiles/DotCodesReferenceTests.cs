using Laydown.Artwork.Pages;
using Laydown.Measures;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Xunit;
using ZXing;
using ZXing.Common;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>A bar code in a picture of 200 ppi, enlarged to dots of 720: read by ZXing, which knows nothing of the product.</summary>
public sealed class DotCodesReferenceTests
{
    private const string Digits = "4006381333931";
    private const double WidthMm = 40, HeightMm = 14, ModuleMm = 0.33, LeftMm = 3.5, SourcePpi = 200, Dpi = 720;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task An_enlarged_code_is_read_and_its_bars_have_one_and_the_same_flank_in_every_row(bool turned)
    {
        using Bench bench = new();
        byte[,] codes = await DotsAsync(bench, [new("EAN-13", Digits, new(LeftMm, 2, 95 * ModuleMm, 10), ModuleMm, 7)], turned);
        Assert.Equal(Digits, Read(codes));
        Assert.Equal(1, DistinctRows(codes));
    }

    [Fact]
    public async Task Without_a_code_or_text_measured_the_flanks_stay_soft()
    {
        using Bench bench = new();
        Assert.InRange(DistinctRows(await DotsAsync(bench, [], turned: false)), 2, int.MaxValue);
    }

    // Black dots of the piece, upright.
    private static async Task<byte[,]> DotsAsync(Bench bench, IReadOnlyList<CodeUse> codes, bool turned)
    {
        ItemRecord item = World.Item("T-1-1", WidthMm, HeightMm, [World.Colour], codes: codes);
        ArtworkPage page = item.Artwork!.Pages[0] with { PixelWidth = (int)(WidthMm / 25.4 * SourcePpi), PixelHeight = (int)(HeightMm / 25.4 * SourcePpi) };
        item = item with { Artwork = item.Artwork with { Kind = ArtworkKind.Png, Pages = [page] } };
        SizeMm sheet = turned ? new(HeightMm, WidthMm) : new(WidthMm, HeightMm);
        RunContext run = DotBench.In(World.Run(sheet, [item], [World.Whole(item, 0, 0, turned: turned)], World.Condition(400, light: false)), (int)Dpi, (int)Dpi, 180, 14);
        Painter bars = new(bench.Pages, (_, plate, x, _, width, _) => plate == "Black" ? Covered(x, WidthMm / width) : (byte)0);
        Directory.CreateDirectory(Path.Combine(bench.Runs, run.Run.Id));
        await File.WriteAllTextAsync(Path.Combine(bench.Runs, run.Run.Id, "manifest.json"), "{\"files\":[]}");
        Reading<IReadOnlyList<ManifestEntry>> made = await bench.DotsAsync(bench.Maker(new PaintedStream(bars)), run, []);
        Assert.True(made.IsTaken, string.Join("\n", made.Faults));
        byte[,] found = DotBench.Codes(bench.InRun(Assert.Single(made.Value, f => f.Ink == "Black").Name));
        return turned ? Upright(found) : found;
    }

    // It lay turned to the left: its first row is its last column.
    private static byte[,] Upright(byte[,] lying)
    {
        byte[,] upright = new byte[lying.GetLength(1), lying.GetLength(0)];
        for (int y = 0; y < upright.GetLength(0); y++)
        {
            for (int x = 0; x < upright.GetLength(1); x++)
                upright[y, x] = lying[lying.GetLength(0) - 1 - x, y];
        }

        return upright;
    }

    // The share of a pixel that bars cover: what a camera or a good program leaves of them.
    private static byte Covered(int x, double pixelMm)
    {
        BitMatrix modules = new MultiFormatWriter().encode(Digits, BarcodeFormat.EAN_13, 95, 1, new Dictionary<EncodeHintType, object> { [EncodeHintType.MARGIN] = 0 });
        double covered = 0;
        for (int module = 0; module < modules.Width; module++)
        {
            double from = LeftMm + (module * ModuleMm), to = from + ModuleMm;
            if (modules[module, 0])
                covered += Math.Max(0, Math.Min(to, (x + 1) * pixelMm) - Math.Max(from, x * pixelMm));
        }

        return (byte)Math.Round(255 * Math.Clamp(covered / pixelMm, 0, 1));
    }

    private static string? Read(byte[,] dots)
    {
        (int rows, int columns) = (dots.GetLength(0), dots.GetLength(1));
        byte[] grey = [.. Enumerable.Range(0, rows * columns).Select(i => dots[i / columns, i % columns] == 0 ? (byte)255 : (byte)0)];
        DecodingOptions options = new() { PossibleFormats = [BarcodeFormat.EAN_13] };
        return new BarcodeReaderGeneric { Options = options }.Decode(new RGBLuminanceSource(grey, columns, rows, RGBLuminanceSource.BitmapFormat.Gray8))?.Text;
    }

    private static int DistinctRows(byte[,] dots) => Enumerable.Range(0, dots.GetLength(0))
        .Select(y => string.Concat(Enumerable.Range(0, dots.GetLength(1)).Select(x => dots[y, x]))).Distinct(StringComparer.Ordinal).Count();
}
