using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Xunit;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Press files against libtiff's own tools, libvips, sha256sum.</summary>
public sealed class PressFilesReferenceTests
{
    [Fact]
    public async Task Libtiff_reads_names_of_inks_resolution_and_size()
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 60, 40, [World.White(WhiteSource.Flood, 150), World.Colour]);
        await bench.MakeAsync(new Painter(bench.Pages, (_, plate, x, y, _, _) => Painter.Noise("a", plate, x, y)), World.Run(new(100, 80), [item], [World.Whole(item, 10, 20)]));

        string colour = Bench.Tool("tiffinfo", bench.InRun("sheet-01-layer-2-colour.tif"));
        Assert.Contains("Image Width: 709 Image Length: 567", colour, StringComparison.Ordinal);
        Assert.Contains("Resolution: 180, 180 pixels/inch", colour, StringComparison.Ordinal);
        Assert.Contains("Samples/Pixel: 6", colour, StringComparison.Ordinal);

        string dump = Bench.Tool("tiffdump", "-m", "200", bench.InRun("sheet-01-layer-2-colour.tif"));
        Assert.Contains("<BigTIFF>", dump, StringComparison.Ordinal);
        Assert.Contains("InkSet (332) SHORT (3) 1<2>", dump, StringComparison.Ordinal);
        Assert.Contains("NumberOfInks (334) SHORT (3) 1<6>", dump, StringComparison.Ordinal);
        Assert.Contains(@"Cyan\0Magenta\0Yellow\0Black\0Light Cyan\0Light Magenta\0", dump, StringComparison.Ordinal);

        string white = Bench.Tool("tiffinfo", bench.InRun("sheet-01-layer-1-white.tif"));
        Assert.Contains("Samples/Pixel: 2", white, StringComparison.Ordinal);
        Assert.Contains("White", white, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Vips_reads_the_same_pixels()
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 60, 40, [World.Colour]);
        await bench.MakeAsync(
            new Painter(bench.Pages, (_, plate, x, y, _, _) => Painter.Noise("a", plate, x, y)),
            World.Run(new(100, 80), [item], [World.Whole(item, 10, 20)], World.Condition(400, light: false)));

        (byte[] pixels, int width, int height, int bands) = Bench.Vips(bench.InRun("sheet-01-layer-1-colour.tif"));
        Assert.Equal((709, 567, 4), (width, height, bands));
        string[] plates = ["Cyan", "Magenta", "Yellow", "Black"];
        for (int y = 0; y < height; y++)
        {
            for (int x = 0; x < width; x++)
            {
                // 10 mm from the left are 71 pixels; the upper edge lies 60 mm up, 142 pixels below the sheet's.
                bool inside = x >= 71 && x < 71 + 425 && y >= 142 && y < 142 + 283;
                for (int ink = 0; ink < 4; ink++)
                    Assert.Equal(inside ? Painter.Noise("a", plates[ink], x - 71, y - 142) : 0, pixels[(((y * width) + x) * 4) + ink]);
            }
        }
    }

    [Fact]
    public async Task Sha256sum_agrees_with_the_manifest()
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 60, 40, [World.White(WhiteSource.UnderImage, 100, 0.4), World.Colour]);
        IReadOnlyList<ManifestEntry> files = await bench.MakeAsync(
            new Painter(bench.Pages, (_, plate, x, y, _, _) => x > y ? Painter.Noise("a", plate, x, y) : (byte)0), World.Run(new(100, 80), [item], [World.Whole(item, 10, 20)]));

        foreach (ManifestEntry file in files)
            Assert.StartsWith(file.Sha256 + " ", Bench.Tool("sha256sum", bench.InRun(file.Name)), StringComparison.Ordinal);
        Assert.Equal(
            files.Select(f => f.Name).Append("manifest.json").Order(StringComparer.Ordinal),
            Directory.GetFiles(Path.Combine(bench.Runs, "R-1")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }
}
