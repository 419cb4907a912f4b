using Laydown.Measures;
using Laydown.Shop.Run;
using Laydown.Web.Tests.Sample;
using SkiaSharp;

namespace Laydown.Web.Tests.Http;

/// <summary>Parts cut out of a made sheet, as the command line does: against what was written into the files.</summary>
public sealed class SheetCropLawTests(MadeShop shop) : IClassFixture<MadeShop>
{
    private SheetServices Sheets => shop.Served.Shop.Services.Sheets;

    [Fact]
    public async Task A_part_shows_and_counts_the_values_that_are_there()
    {
        OpenedSheet opened = await OpenedAsync();
        Reading<SheetCrop> crop = await Sheets.Crop.CropAsync(opened, new(SheetSeenKind.Ink, 2), new(0, 31, 57, 40, 23), TestContext.Current.CancellationToken);
        Assert.True(crop.IsTaken, string.Join("\n", crop.Faults));
        using SKBitmap picture = SKBitmap.Decode(crop.Value.Png);
        Assert.Equal((40, 23), (picture.Width, picture.Height));
        Dictionary<int, long> counts = [];
        for (int y = 0; y < 23; y++)
        {
            for (int x = 0; x < 40; x++)
            {
                int value = MadeSheets.Value(1, 57 + y, 31 + x);
                Assert.Equal(255 - value, picture.GetPixel(x, y).Red);
                counts[value] = counts.GetValueOrDefault(value) + 1;
            }
        }

        CropInk ink = Assert.Single(crop.Value.Inks);
        Assert.Equal(counts.OrderBy(c => c.Key).Select(c => (c.Key, c.Value)), ink.Values.Select(v => (v.Value, v.Count)));
        Assert.Equal(counts.Sum(c => c.Key * c.Value) / 2.55 / (40 * 23), ink.Percent, tolerance: 1e-9);
    }

    [Fact]
    public async Task All_layers_tell_every_ink() =>
        Assert.Equal((await OpenedAsync()).Sheet.Planes.Count, (await Sheets.Crop.CropAsync(await OpenedAsync(), new(SheetSeenKind.All, 0), new(0, 0, 0, 8, 8), TestContext.Current.CancellationToken)).Value.Inks.Count);

    [Theory]
    [InlineData(-1, 0, 10, 10, "within")]
    [InlineData(0, 0, 0, 10, "within")]
    [InlineData(0, 0, int.MaxValue, 10, "within")]
    [InlineData(int.MaxValue, 0, 10, 10, "within")]
    public async Task A_part_beside_the_sheet_is_refused_by_its_place(int left, int top, int columns, int rows, string words)
    {
        Reading<SheetCrop> crop = await Sheets.Crop.CropAsync(await OpenedAsync(), new(SheetSeenKind.All, 0), new(0, left, top, columns, rows), TestContext.Current.CancellationToken);
        Assert.Contains(words, Assert.Single(crop.Faults).Wanted, StringComparison.Ordinal);
    }

    private async Task<OpenedSheet> OpenedAsync() => (await Sheets.Open.OpenAsync(MadeSheets.Run, 1, "contone", TestContext.Current.CancellationToken)).Value;
}
