using Laydown.Output.PressFiles;
using Laydown.Press.Inks;
using Laydown.Raster.Passes;
using Laydown.Shop.Run;
using Xunit;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>What the forecast and the pictures of passes read from the files of a run.</summary>
public sealed class RunInksLawTests
{
    [Fact]
    public async Task The_small_picture_is_the_mean_of_what_was_printed_and_a_crop_of_dots_is_the_dots_there()
    {
        using Bench bench = new();
        Shop.Orders.ItemRecord item = World.Item("T-1-1", 40, 24, [World.Colour]);
        RunContext run = DotBench.In(World.Run(new(40, 24), [item], [World.Whole(item, 0, 0)], World.Condition(400, light: false), 180), 180, 180, 180, 10);
        Painter painter = new(bench.Pages, (_, plate, x, _, width, _) => (byte)(plate == "Black" ? x < width / 2 ? 204 : 51 : plate == "Yellow" ? 255 : 0));
        IReadOnlyList<ManifestEntry> contone = await bench.MakeAsync(painter, run);
        IReadOnlyList<ManifestEntry> made = (await bench.DotsAsync(bench.Maker(new PaintedStream(painter)), run, contone)).Value;
        string folder = Path.GetDirectoryName(bench.InRun("run.json"))!;

        (IReadOnlyList<(int Layer, InkRole Role)> planes, BandPicture picture) = new RunInks().Small(folder, 1, [0], World.Inks, 6, 10).Value;
        Assert.Equal([(0, InkRole.Cyan), (0, InkRole.Magenta), (0, InkRole.Yellow), (0, InkRole.Black)], planes);
        for (int row = 0; row < 6; row++)
        {
            // Codes of 8 bits; the middle of the picture lies between two columns.
            Assert.All(picture.Row(2, row).ToArray(), v => Assert.Equal(1, v, 0.004f));
            Assert.Equal([0.8, 0.8, 0.8, 0.8, 0.2, 0.2, 0.2, 0.2], picture.Row(3, row).ToArray().Where((_, x) => x is not (4 or 5)).Select(v => Math.Round(v, 2)));
        }

        string file = Assert.Single(made, f => f.What == "dots" && f.Ink == "Black").Name;
        byte[,] codes = DotBench.Codes(bench.InRun(file));
        (int bits, int stride, int rows, int columns, byte[] dots) = new RunInks().Dots(folder, file, 30, 40, 13, 50).Value;
        Assert.Equal((40, 50), (rows, columns));
        for (int row = 0; row < rows; row++)
            for (int column = 0; column < columns; column++)
                Assert.Equal(codes[30 + row, 13 + column], (dots[(row * stride) + (column * bits / 8)] >> (8 - bits - (column * bits % 8))) & ((1 << bits) - 1));
        Assert.False(new RunInks().Dots(folder, "../" + file, 0, 1, 0, 1).IsTaken);
        Assert.False(new RunInks().Dots(folder, file, 100_000, 1, 0, 1).IsTaken);
        Assert.Equal("no contone file", Assert.Single(new RunInks().Small(folder, 2, [0], World.Inks, 6, 10).Faults).Found);
    }
}
