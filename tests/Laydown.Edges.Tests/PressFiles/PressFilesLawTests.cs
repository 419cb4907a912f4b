using System.Text.Json;
using Laydown.Artwork.Pages;
using Laydown.Formats.Json;
using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Colour;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.PressFiles;

public sealed class PressFilesLawTests
{
    private static byte Speckle(string page, string plate, int x, int y, int width, int height) => Painter.Noise(page, plate, x, y);

    [Fact]
    public async Task The_mean_of_a_sheet_is_the_mean_of_its_pieces_by_their_area()
    {
        using Bench bench = new();
        ItemRecord one = World.Item("T-1-1", 30, 20, [World.Colour]);
        ItemRecord other = World.Item("T-1-2", 25.4, 10, [World.Colour]);
        await bench.MakeAsync(new Painter(bench.Pages, Speckle), World.Run(
            new(90, 70), [one, other],
            [World.Whole(one, 2, 3), World.Whole(one, 40, 3, 2), World.Whole(other, 5, 40), World.Whole(other, 60, 30, 2, turned: true)],
            World.Condition(400, light: false), ppi: 90));

        (byte[] pixels, int width, int height, int bands) = Bench.Vips(bench.InRun("sheet-01-layer-1-colour.tif"));
        string[] plates = ["Cyan", "Magenta", "Yellow", "Black"];
        for (int ink = 0; ink < bands; ink++)
        {
            double sheet = 0;
            for (int i = ink; i < pixels.Length; i += bands)
                sheet += pixels[i];
            double pieces = (2 * Sum("T-1-1", plates[ink], 106, 71)) + (2 * Sum("T-1-2", plates[ink], 90, 35));
            Assert.Equal(pieces / ((double)width * height), sheet / ((double)width * height), 1e-9);
        }

        static double Sum(string item, string plate, int width, int height) =>
            Enumerable.Range(0, height).Sum(y => Enumerable.Range(0, width).Sum(x => (double)Painter.Noise(item + "#1", plate, x, y)));
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(90, false)]
    [InlineData(180, false)]
    [InlineData(270, false)]
    [InlineData(0, true)]
    [InlineData(90, true)]
    [InlineData(180, true)]
    [InlineData(270, true)]
    public async Task A_piece_lies_turned_counter_clockwise_and_mirrored_as_wanted(double angle, bool mirrored)
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 25.4, 12.7, [World.Colour with { Mirrored = mirrored, Face = mirrored ? SheetFace.Second : SheetFace.First }]);
        await bench.MakeAsync(new Painter(bench.Pages, Speckle), World.Run(
            new(50.8, 50.8), [item], [World.At(item, 12.7, 5.08, angle)], World.Condition(400, light: false), ppi: 100));

        (byte[] pixels, int width, int height, _) = Bench.Vips(bench.InRun("sheet-01-layer-1-colour.tif"));
        Assert.Equal((200, 200), (width, height));
        (int w, int h) = angle is 90 or 270 ? (50, 100) : (100, 50);
        for (int y = 0; y < h; y++)
        {
            for (int x = 0; x < w; x++)
            {
                // Turned counter-clockwise, the picture's upper edge lies to the left; before that it was mirrored.
                (int px, int py) = angle switch { 90 => (99 - y, x), 180 => (99 - x, 49 - y), 270 => (y, 49 - x), _ => (x, y) };
                px = mirrored ? 99 - px : px;
                int at = (((200 - 20 - h + y) * 200) + 50 + x) * 4;
                Assert.Equal(Painter.Noise("T-1-1#1", "Cyan", px, py), pixels[at]);
            }
        }
    }

    [Fact]
    public async Task Panels_show_their_part_and_together_the_whole_picture()
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 76.2, 25.4, [World.Colour]);
        RunContext run = World.Run(
            new(60, 60), [item],
            [
                new("T-1-1/1", 1, new(0, 0, 50.8, 25.4), false, new RectMm(0, 0, 50.8, 25.4)),
                new("T-1-1/2", 1, new(0, 30, 50.8, 25.4), false, new RectMm(25.4, 0, 50.8, 25.4)),
            ],
            World.Condition(400, light: false), ppi: 100);
        await bench.MakeAsync(new Painter(bench.Pages, Speckle), run);

        (byte[] pixels, int width, int height, _) = Bench.Vips(bench.InRun("sheet-01-layer-1-colour.tif"));
        int top = height - (int)Math.Round(55.4 * 100 / 25.4);
        for (int y = 0; y < 100; y++)
        {
            for (int x = 0; x < 200; x++)
            {
                Assert.Equal(Painter.Noise("T-1-1#1", "Cyan", x, y), pixels[(((height - 100 + y) * width) + x) * 4]);
                Assert.Equal(Painter.Noise("T-1-1#1", "Cyan", x + 100, y), pixels[(((top + y) * width) + x) * 4]);
            }
        }
    }

    [Fact]
    public async Task Layers_on_both_faces_fall_on_each_other_when_the_sheet_is_turned_over()
    {
        using Bench bench = new();
        ItemRecord item = World.Item(
            "T-1-1", 25.4, 12.7, [World.Colour, World.Colour with { Face = SheetFace.Second, Mirrored = true }]);
        await bench.MakeAsync(new Painter(bench.Pages, Speckle), World.Run(
            new(50.8, 25.4), [item], [World.Whole(item, 2.54, 5.08)], World.Condition(400, light: false), ppi: 100));

        (byte[] front, int width, int height, int bands) = Bench.Vips(bench.InRun("sheet-01-layer-1-colour.tif"));
        byte[] back = Bench.Vips(bench.InRun("sheet-01-layer-2-colour.tif")).Pixels;
        for (int y = 0; y < height; y++)
        {
            for (int x = 0; x < width; x++)
                Assert.Equal(front[((y * width) + x) * bands], back[((y * width) + width - 1 - x) * bands]);
        }
    }

    [Fact]
    public async Task Day_and_night_take_their_pages_and_no_pixel_exceeds_the_limit()
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 30, 20, [World.Colour with { ArtworkPage = 2 }, World.White(WhiteSource.Flood), World.Colour]);
        RunContext run = World.Run(new(40, 30), [item], [World.Whole(item, 5, 5)], World.Condition(210), ppi: 90, stack: item.Stack! with { Lit = true });
        run = run with { Stock = World.Board(40, 30, Laydown.Press.Stocks.SheetLight.Clear) };
        Painter painter = new(bench.Pages, Speckle);
        IReadOnlyList<ManifestEntry> files = await bench.MakeAsync(painter, run);

        Assert.Equal([1, 2], painter.Requests.Select(r => r.Page).Order());
        byte[] night = Bench.Vips(bench.InRun("sheet-01-layer-1-colour.tif")).Pixels;
        byte[] day = Bench.Vips(bench.InRun("sheet-01-layer-3-colour.tif")).Pixels;
        Assert.NotEqual(night, day);
        foreach (byte[] layer in new[] { night, day })
        {
            int most = 0;
            for (int i = 0; i < layer.Length; i += 6)
                most = Math.Max(most, layer.AsSpan(i, 6).ToArray().Sum(v => v));
            Assert.InRange(most, (2.1 * 255) - 7, 2.1 * 255);
        }

        Assert.Contains(files, f => f.What == "lit-preview");
        Assert.Contains(files, f => f.What == "preview");
    }

    [Fact]
    public async Task Two_makings_give_the_same_bytes_and_the_second_replaces_the_first()
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 30, 20, [World.White(WhiteSource.UnderImage, 80, 0.5), World.Colour]);
        RunContext run = World.Run(new(40, 30), [item], [World.Whole(item, 5, 5)], ppi: 90);
        IReadOnlyList<ManifestEntry> first = await bench.MakeAsync(new Painter(bench.Pages, Speckle), run);
        File.WriteAllText(bench.InRun("left-over.txt"), "of the first making");
        IReadOnlyList<ManifestEntry> second = await bench.MakeAsync(new Painter(bench.Pages, Speckle), run);
        Assert.Equal(first, second);
        Assert.False(File.Exists(bench.InRun("left-over.txt")));
        Assert.Empty(Directory.GetFileSystemEntries(bench.Scratch));
    }

    [Fact]
    public async Task Progress_never_falls_and_ends_at_a_hundred()
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 30, 20, [World.White(WhiteSource.Flood), World.Colour]);
        Listener listener = new();
        RunContext run = World.Run(new(40, 30), [item], [World.Whole(item, 5, 5)], ppi: 90);
        await bench.Maker(new Painter(bench.Pages, Speckle)).MakeAsync(run, bench.Runs, listener, CancellationToken.None);
        Assert.Equal(listener.Told.Select(t => t.DonePercent).Order(), listener.Told.Select(t => t.DonePercent));
        Assert.Equal(100, listener.Told[^1].DonePercent);
        Assert.All(listener.Told, t => Assert.Equal("R-1", t.RunId));
    }

    [Fact]
    public async Task Ink_measured_at_a_low_resolution_is_the_ink_of_the_press_files()
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 254, 127, [World.White(WhiteSource.UnderImage, 80), World.Colour]);
        Painter painter = new(bench.Pages, (_, plate, x, y, width, height) =>
            (byte)(x * 2 < width ? plate == "Cyan" ? 255 * y / height : plate == "Black" ? 40 : 0 : 0));
        await bench.MakeAsync(painter, World.Run(new(254, 127), [item], [World.Whole(item, 0, 0)], ppi: 90));
        Reading<IReadOnlyList<LayerInk>> measured = await new Laydown.Output.PressFiles.InkMeasure(painter)
            .MeasureAsync(item, World.Condition(), World.Inks, "none.icc", CancellationToken.None);
        Assert.True(measured.IsTaken);
        Assert.InRange(painter.Requests[^1].Ppi, 10, 50);

        // The renderer here samples points, so a step of 1/height of a ramp is the difference allowed.
        (byte[] colour, _, int height, _) = Bench.Vips(bench.InRun("sheet-01-layer-2-colour.tif"));
        InkRole[] roles = [InkRole.Cyan, InkRole.Magenta, InkRole.Yellow, InkRole.Black, InkRole.LightCyan, InkRole.LightMagenta];
        for (int ink = 0; ink < roles.Length; ink++)
        {
            double mean = 0;
            for (int i = ink; i < colour.Length; i += 6)
                mean += colour[i] / 255.0;
            LayerInk line = Assert.Single(measured.Value, l => l.Layer == 1 && l.Role == roles[ink]);
            Assert.Equal(mean / (colour.Length / 6.0), line.MeanCoverage, 0.005);
        }

        Assert.Equal(0.4, Assert.Single(measured.Value, l => l.Role == InkRole.White).MeanCoverage, 0.002);
        Assert.Equal(0.8, measured.Value.First(l => l.Layer == 0).MaxTotal, 0.001);
    }

    [Fact]
    public async Task White_over_full_laydown_is_shared_by_two_channels()
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 20, 20, [World.White(WhiteSource.Flood, 150), World.Colour]);
        await bench.MakeAsync(new Painter(bench.Pages, Speckle), World.Run(new(20, 20), [item], [World.Whole(item, 0, 0)], ppi: 90));
        (byte[] white, _, _, int bands) = Bench.Vips(bench.InRun("sheet-01-layer-1-white.tif"));
        Assert.Equal(2, bands);
        Assert.All(white, v => Assert.Equal(191, v));
    }

    [Theory]
    [InlineData(80_000_000, 0, 180)]
    [InlineData(21_000, 0, 90)]
    [InlineData(1_000, 0, 72)]
    [InlineData(1_000, 1.0, 120)]
    [InlineData(1_000, 0.5, 240)]
    public async Task The_resolution_falls_to_a_divisor_or_rises_to_one_that_codes_need(long budget, double moduleMm, int expectedPpi)
    {
        using Bench bench = new();
        CodeUse[] codes = moduleMm > 0 ? [new("QR", "x", new(0, 0, 10, 10), moduleMm, 4)] : [];
        ItemRecord item = World.Item("T-1-1", 40, 40, [World.Colour], codes: codes);
        RunContext run = World.Run(new(40, 40), [item], [World.Whole(item, 0, 0)], ppi: 180);
        await bench.Maker(new Painter(bench.Pages, Speckle), budget).MakeAsync(run, bench.Runs, new Listener(), CancellationToken.None);
        using JsonDocument manifest = JsonDocument.Parse(File.ReadAllText(bench.InRun("manifest.json")));
        Assert.Equal(expectedPpi, manifest.RootElement.GetProperty("contonePpi").GetInt32());
        Assert.Equal(0, 720 % expectedPpi);
        Assert.Contains(Invariant($"{expectedPpi} ppi"), Bench.Tool("tiffinfo", bench.InRun("sheet-01-layer-1-colour.tif")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_run_is_written_as_it_is_read()
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 20, 20, [World.Colour]);
        RunContext run = World.Run(new(20, 20), [item], [World.Whole(item, 0, 0)], ppi: 90);
        await bench.MakeAsync(new Painter(bench.Pages, Speckle), run);
        Reading<Laydown.Plan.Runs.Run> read = LaydownJson.ReadFile<Laydown.Plan.Runs.Run>(bench.InRun("run.json"));
        Assert.True(read.IsTaken, string.Join("\n", read.Faults));
        Assert.Equal(LaydownJson.ToBytes(run.Run), LaydownJson.ToBytes(read.Value));
    }
}
