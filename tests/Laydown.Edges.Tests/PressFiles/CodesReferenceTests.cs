using Laydown.Press.Stacks;
using Laydown.Shop.Orders;
using ZXing;
using ZXing.Common;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Bar codes drawn by ZXing, separated to inks, put together again and read by ZXing.</summary>
public sealed class CodesReferenceTests
{
    [Theory]
    [InlineData(BarcodeFormat.EAN_13, "7300011000017", 113, 40, 120, false)]
    [InlineData(BarcodeFormat.EAN_13, "7300011000017", 113, 40, 120, true)]
    [InlineData(BarcodeFormat.QR_CODE, "https://saltmarsh.example/trail/7", 41, 41, 120, false)]
    [InlineData(BarcodeFormat.QR_CODE, "https://saltmarsh.example/trail/7", 41, 41, 120, true)]
    public async Task A_code_is_read_from_the_inks_put_together_again(BarcodeFormat format, string text, int modules, int high, int ppi, bool turned)
    {
        // Four pixels for each module at 120 ppi, in rich black that the ink limit cuts.
        using Bench bench = new();
        BitMatrix code = new MultiFormatWriter().encode(text, format, modules, high, new Dictionary<EncodeHintType, object> { [EncodeHintType.MARGIN] = format == BarcodeFormat.EAN_13 ? 18 : 4 });
        double module = 4 * 25.4 / ppi;
        ItemRecord item = World.Item("T-1-1", code.Width * module, code.Height * module, [World.White(WhiteSource.Flood), World.Colour]);
        Painter painter = new(bench.Pages, (_, plate, x, y, _, _) =>
            code[Math.Min(x / 4, code.Width - 1), Math.Min(y / 4, code.Height - 1)] ? (byte)(plate == "Black" ? 255 : 200) : (byte)(plate == "Yellow" ? 12 : 0));
        await bench.MakeAsync(painter, World.Run(new(180, 180), [item], [World.Whole(item, 10, 12, turned: turned)], World.Condition(250), ppi: ppi));

        (byte[] inks, int width, int height, int bands) = Bench.Vips(bench.InRun("sheet-01-layer-2-colour.tif"));
        Assert.Equal(6, bands);
        Result? read = new BarcodeReaderGeneric { AutoRotate = true, Options = new() { TryHarder = true, PossibleFormats = [format] } }
            .Decode(new RGBLuminanceSource(Recombined(inks), width, height, RGBLuminanceSource.BitmapFormat.RGB24));
        Assert.NotNull(read);
        Assert.Equal(text, read.Text);
    }

    // Light inks count with their share of colourant; each ink takes its own primary away.
    private static byte[] Recombined(byte[] inks)
    {
        byte[] rgb = new byte[inks.Length / 6 * 3];
        for (int pixel = 0; pixel < inks.Length / 6; pixel++)
        {
            double black = 1 - (inks[(pixel * 6) + 3] / 255.0);
            for (int primary = 0; primary < 3; primary++)
            {
                double ink = inks[(pixel * 6) + primary] + (primary < 2 ? 0.3 * inks[(pixel * 6) + 4 + primary] : 0);
                rgb[(pixel * 3) + primary] = (byte)Math.Clamp(255 * black * (1 - (ink / 255)), 0, 255);
            }
        }

        return rgb;
    }
}
