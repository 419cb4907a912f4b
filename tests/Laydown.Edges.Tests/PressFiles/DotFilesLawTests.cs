using System.Text.Json;
using Laydown.Formats.TiffWriting;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press.Stacks;
using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Xunit;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Dots of a run: where they lie, what is counted, and that a make broken off anywhere ends with the same bytes.</summary>
public sealed class DotFilesLawTests
{
    private const int Dpi = 180;

    private static readonly ScreenInk[] Cmyk = [new("Cyan", 0.55, null), new("Magenta", 0.6, null), new("Yellow", 0.1, null), new("Black", 1, null)];

    private static Painter Speckle(Bench bench) => new(bench.Pages, (page, plate, x, y, _, _) => Painter.Noise(page, plate, x, y));

    // Pieces turned to all four sides; colour on both faces, the second mirrored; two planes of white.
    private static RunContext Mixed(params double[] dropsPl)
    {
        Layer back = World.Colour with { Face = SheetFace.Second, Mirrored = true };
        LayerStack stack = new([World.Colour, World.White(WhiteSource.Flood, 200), back], false, []);
        ItemRecord one = World.Item("T-1-1", 40, 25, stack.Layers) with { Stack = stack }, two = World.Item("T-1-2", 30, 20, stack.Layers) with { Stack = stack };
        Placement[] placements = [World.Whole(one, 5, 5), World.Whole(one, 50, 4, 2, turned: true), World.At(two, 6, 40, 180), World.At(two, 78, 20, 270, 2)];
        return DotBench.In(World.Run(new(104, 66), [one, two], placements, World.Condition(400, light: false), Dpi, stack), Dpi, Dpi, Dpi, dropsPl);
    }

    [Theory]
    [InlineData(new double[] { 14 }, ScreenKind.Arrays)]
    [InlineData(new double[] { 7, 14 }, ScreenKind.Arrays)]
    [InlineData(new double[] { 5, 9, 14 }, ScreenKind.Arrays)]
    [InlineData(new double[] { 14 }, ScreenKind.Intervals)]
    public async Task Dots_are_the_contone_of_that_resolution_put_through_the_screens(double[] drops, ScreenKind kind)
    {
        using Bench bench = new();
        RunContext run = Mixed(drops);
        IReadOnlyList<ManifestEntry> contone = await bench.MakeAsync(Speckle(bench), run);
        Reading<IReadOnlyList<ManifestEntry>> made = await bench.DotsAsync(bench.Maker(new PaintedStream(Speckle(bench))), run, contone, DotBench.Wish with { Screen = kind });
        Assert.True(made.IsTaken, string.Join("\n", made.Faults));
        Assert.Equal(10, made.Value.Count(f => f.What == "dots"));
        foreach ((string file, int layer, ScreenInk[] inks) in new[]
            {
                ("sheet-01-layer-1-colour.tif", 1, Cmyk), ("sheet-01-layer-2-white.tif", 2, [new("White", 0.5, null), new("White 2", 0.5, null)]),
                ("sheet-01-layer-3-colour.tif", 3, Cmyk),
            })
            Same(bench, file, made.Value, layer, inks, drops, kind);
    }

    [Fact]
    public async Task Dots_of_pieces_within_each_others_rectangles_are_their_contone_put_through_the_screens()
    {
        using Bench bench = new();
        RunContext run = DotBench.In(NestedPieces.Run(Dpi), Dpi, Dpi, Dpi, 14);
        IReadOnlyList<ManifestEntry> contone = await bench.MakeAsync(Speckle(bench), run);
        Reading<IReadOnlyList<ManifestEntry>> made = await bench.DotsAsync(bench.Maker(new PaintedStream(Speckle(bench))), run, contone, DotBench.Wish);
        Assert.True(made.IsTaken, string.Join("\n", made.Faults));
        Same(bench, "sheet-01-layer-1-colour.tif", made.Value, 1, Cmyk, [14], DotBench.Wish.Screen);
    }

    private static void Same(Bench bench, string file, IReadOnlyList<ManifestEntry> made, int layer, ScreenInk[] inks, double[] drops, ScreenKind kind)
    {
        using ContoneTiffReader contone = ContoneTiffReader.Open(bench.InRun(file)).Value;
        Tile tile = new(inks.Length, contone.Rows, contone.Columns);
        byte[] line = new byte[contone.Columns * inks.Length];
        for (int row = 0; row < contone.Rows; row++)
        {
            contone.ReadRow(row, 0, line);
            for (int at = 0; at < line.Length; at++)
                tile.Row(at % inks.Length, row)[at / inks.Length] = (ushort)(257 * line[at]);
        }

        DropLevels levels = new(drops);
        DotRows wanted = new(inks.Length, contone.Rows, contone.Columns, levels.BitsPerDot);
        LayerScreens.Of(inks, levels, kind).Run(tile, contone.Rows, contone.Columns, wanted, 0);
        for (int ink = 0; ink < inks.Length; ink++)
        {
            ManifestEntry entry = Assert.Single(made, f => f.What == "dots" && f.Layer == layer && f.Ink == inks[ink].Role);
            Assert.Equal((1, levels.BitsPerDot, Dpi, Dpi), (entry.Sheet, entry.Bits, entry.DpiScan, entry.DpiFeed));
            using DotTiffReader dots = DotTiffReader.Open(bench.InRun(entry.Name)).Value;
            Assert.Equal((contone.Columns, contone.Rows, inks[ink].Role), (dots.Columns, dots.Rows, dots.InkName));
            byte[] read = new byte[wanted.Stride];
            for (int row = 0; row < dots.Rows; row++)
            {
                dots.ReadRow(row, 0, dots.Columns, read);
                Assert.True(wanted.Row(ink, row).SequenceEqual(read), Invariant($"{entry.Name}, row {row}"));
            }
        }
    }

    /// <summary>One pass of 160 nozzles that stand as close as the rows: nozzle 40 of black prints every 160th row. Half black there goes half and half to the rows beside.</summary>
    [Fact]
    public async Task Rows_of_a_missing_nozzle_are_bare_and_those_beside_take_their_ink_over()
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 20, 30, [World.Colour]);
        RunContext sound = DotBench.In(World.Run(new(20, 30), [item], [World.Whole(item, 0, 0)], World.Condition(400, light: false), 60), 360, 360, 60, 10);
        Laydown.Press.Machines.Mode mode = sound.Mode with { Passes = 1, NozzlesUsed = 160, FeedRows = 160 };
        sound = sound with { Mode = mode, Press = sound.Press with { Modes = [mode] } };
        RunContext dead = sound with { Press = sound.Press with { NozzleStates = [new("Black", [40], []), new("Cyan", [41], [])] } };
        Painter painter = new(bench.Pages, (_, plate, _, _, _, _) => (byte)(plate == "Black" ? 127 : 0));
        IReadOnlyList<ManifestEntry> contone = await bench.MakeAsync(painter, sound);
        async Task<int[]> RowsOf(RunContext run)
        {
            Reading<IReadOnlyList<ManifestEntry>> made = await bench.DotsAsync(bench.Maker(new PaintedStream(painter)), run, contone);
            byte[,] black = DotBench.Codes(bench.InRun(Assert.Single(made.Value, f => f.What == "dots" && f.Ink == "Black").Name));
            return [.. Enumerable.Range(0, black.GetLength(0)).Select(r => Enumerable.Range(0, black.GetLength(1)).Count(c => black[r, c] != 0))];
        }

        int[] whole = await RowsOf(sound), mended = await RowsOf(dead);
        int[] rows = [.. Enumerable.Range(0, mended.Length).Where(r => mended[r] == 0)];
        Assert.Equal(Enumerable.Range(0, whole.Length).Where(r => (r + 159) % 160 == 40), rows);

        // Rows of 283 dots by an array differ among each other by some dots; beside a dead row stand half as many more.
        foreach (int row in rows.Where(r => r > 0 && r < mended.Length - 1))
            Assert.Equal(1.5, (mended[row - 1] + mended[row + 1]) / (double)(whole[row - 1] + whole[row + 1]), 0.1);
        Assert.Equal(1, mended.Sum() / (double)whole.Sum(), 0.005);
    }

    [Theory]
    [InlineData(360, 180)]
    [InlineData(120, 240)]
    public async Task A_press_of_other_dots_across_than_along_keeps_places_and_sizes_in_millimetres(int scan, int feed)
    {
        // The left third of the picture is black; the piece lies upright, and turned, where its left becomes its lower end.
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 30, 20, [World.Colour]);
        RunContext run = DotBench.In(
            World.Run(new(60, 50), [item], [World.Whole(item, 5, 5), World.Whole(item, 38, 12, 2, turned: true)], World.Condition(400, light: false), 60), scan, feed, 60, 10);
        Painter painter = new(bench.Pages, (_, plate, x, _, width, _) => (byte)(plate == "Black" && x < width / 3 ? 255 : 0));
        IReadOnlyList<ManifestEntry> contone = await bench.MakeAsync(painter, run);
        Reading<IReadOnlyList<ManifestEntry>> made = await bench.DotsAsync(bench.Maker(new PaintedStream(painter)), run, contone);
        byte[,] black = DotBench.Codes(bench.InRun(Assert.Single(made.Value, f => f.What == "dots" && f.Ink == "Black").Name));
        Assert.Equal(((int)Math.Round(50 * feed / 25.4), (int)Math.Round(60 * scan / 25.4)), (black.GetLength(0), black.GetLength(1)));
        for (int row = 0; row < black.GetLength(0); row++)
        {
            for (int column = 0; column < black.GetLength(1); column++)
            {
                double x = (column + 0.5) * 25.4 / scan, y = 50 - ((row + 0.5) * 25.4 / feed);
                bool near = Near(x, 5, 15, 38, 58) || Near(y, 5, 25, 12, 22);
                bool inside = (x is > 5 and < 15 && y is > 5 and < 25) || (x is > 38 and < 58 && y is > 12 and < 22);
                if (!near)
                    Assert.True(inside == (black[row, column] == 1), Invariant($"{x:0.00} mm, {y:0.00} mm: {black[row, column]}"));
            }
        }

        // Edges fall on the nearest dot and black meets bare within a pixel of the plates, which the finer of both resolutions has.
        bool Near(double at, params double[] edges) => edges.Any(e => Math.Abs(at - e) < 1.5 * 25.4 / Math.Min(scan, feed));
    }

    [Fact]
    public async Task Ink_of_files_and_pieces_is_what_their_dots_add_up_to()
    {
        using Bench bench = new();
        RunContext run = Mixed(5, 9, 14);
        run = run with { Run = run.Run with { Sheets = [run.Run.Sheets[0] with { Repeats = 3 }] } };
        IReadOnlyList<ManifestEntry> contone = await bench.MakeAsync(Speckle(bench), run);
        IReadOnlyList<ManifestEntry> made = (await bench.DotsAsync(bench.Maker(new PaintedStream(Speckle(bench))), run, contone)).Value;
        using JsonDocument manifest = JsonDocument.Parse(File.ReadAllText(bench.InRun("manifest.json")));
        JsonElement dots = manifest.RootElement.GetProperty("dots");
        Assert.Equal(3, dots.GetProperty("sheets")[0].GetProperty("repeats").GetInt32());
        double[] drops = [0, 5, 9, 14];
        foreach (JsonElement file in manifest.RootElement.GetProperty("files").EnumerateArray().Where(f => f.GetProperty("what").GetString() == "dots"))
        {
            byte[,] codes = DotBench.Codes(bench.InRun(file.GetProperty("name").GetString()!));
            long[] counts = new long[4];
            foreach (byte code in codes)
                counts[code]++;
            Assert.Equal(counts, file.GetProperty("dots").EnumerateArray().Select(c => c.GetInt64()));
            double ml = counts.Zip(drops, (n, pl) => n * pl * 1e-9).Sum();
            Assert.Equal(ml, file.GetProperty("ml").GetDouble(), 1e-12);
            Assert.Equal(ml, made.Single(f => f.Name == file.GetProperty("name").GetString()).Ml!.Value, 1e-12);
            double pieces = dots.GetProperty("pieces").EnumerateArray()
                .Where(p => p.GetProperty("layer").GetInt32() == file.GetProperty("layer").GetInt32() && p.GetProperty("ink").GetString() == file.GetProperty("ink").GetString())
                .Sum(p => p.GetProperty("ml").GetDouble());
            Assert.Equal(ml, pieces, 1e-12);
        }

        Assert.Equal(made.Select(f => (f.Name, f.Sha256)), manifest.RootElement.GetProperty("files").EnumerateArray().Select(f => (f.GetProperty("name").GetString()!, f.GetProperty("sha256").GetString()!)));
        foreach (ManifestEntry file in made)
            Assert.StartsWith(file.Sha256 + " ", Bench.Tool("sha256sum", bench.InRun(file.Name)), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(bench.Scratch));
    }

    [Theory]
    [InlineData(DotCompression.None)]
    [InlineData(DotCompression.PackBits)]
    [InlineData(DotCompression.Deflate)]
    public async Task A_make_broken_off_and_damaged_ends_with_the_same_bytes_and_keeps_what_is_sound(DotCompression compression)
    {
        using Bench bench = new();
        RunContext run = Mixed(7, 14);
        DotsWish wish = new(null, compression, true);
        IReadOnlyList<ManifestEntry> contone = await bench.MakeAsync(Speckle(bench), run);
        IReadOnlyList<ManifestEntry> whole = (await bench.DotsAsync(bench.Maker(new PaintedStream(Speckle(bench))), run, contone, wish with { Resume = false })).Value;

        foreach (string stop in new[] { "layer 1: band 2 ", "layer 2: band 3 ", "layer 3: band 2 " })
        {
            using CancellationTokenSource source = new();
            Listener listener = new(told =>
            {
                if (told.Step.Contains(stop, StringComparison.Ordinal))
                    source.Cancel();
            });
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
                bench.DotsAsync(bench.Maker(new PaintedStream(Speckle(bench)), 2), run, contone, wish, listener, source.Token));
        }

        // A block of the first file is lost as by a loss of power, and the last line of a journal is cut short.
        string scratch = Path.Combine(bench.Scratch, "R-1.dots");
        using (FileStream file = File.OpenWrite(Path.Combine(scratch, "files", "sheet-01-layer-1-cyan-dots.tif")))
        {
            file.Position = 100;
            file.Write(new byte[50]);
        }

        string journal = Path.Combine(scratch, "work", "sheet-01-layer-2.journal");
        File.WriteAllBytes(journal, File.ReadAllBytes(journal)[..^9]);
        Listener last = new();
        IReadOnlyList<ManifestEntry> resumed = (await bench.DotsAsync(bench.Maker(new PaintedStream(Speckle(bench)), 2), run, contone, wish, last)).Value;
        Assert.Equal(whole, resumed);
        int bands = (int)Math.Ceiling(66 * Dpi / 25.4 / 128);
        Assert.InRange(last.Told.Count(t => t.Step.Contains("band", StringComparison.Ordinal)), 2, (3 * bands) - 1);
        Assert.True(last.Told.Zip(last.Told.Skip(1)).All(p => p.First.DonePercent <= p.Second.DonePercent));
    }

    [Fact]
    public async Task Changed_inputs_start_anew_and_say_so()
    {
        using Bench bench = new();
        RunContext run = Mixed(14);
        IReadOnlyList<ManifestEntry> contone = await bench.MakeAsync(Speckle(bench), run);
        using CancellationTokenSource source = new();
        Listener stop = new(told =>
        {
            if (told.Step.Contains("layer 2", StringComparison.Ordinal))
                source.Cancel();
        });
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => bench.DotsAsync(bench.Maker(new PaintedStream(Speckle(bench))), run, contone, null, stop, source.Token));
        Listener listener = new();
        RunContext changed = run with { Condition = run.Condition with { TotalLimitPercent = 300 } };
        Assert.True((await bench.DotsAsync(bench.Maker(new PaintedStream(Speckle(bench))), changed, contone, DotBench.Wish with { Resume = true }, listener)).IsTaken);
        Assert.Contains("changed", listener.Told[0].Step, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sheets_of_one_picture_are_made_once_and_share_their_bytes()
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 30, 20, [World.Colour]);
        RunContext run = DotBench.In(World.Run(new(40, 30), [item], [World.Whole(item, 5, 5)], World.Condition(400, light: false), 90), 90, 90, 90, 14);
        SheetLayout first = run.Run.Sheets[0];
        run = run with { Run = run.Run with { Sheets = [first, first with { Placements = [World.Whole(item, 5, 5, 2)] }, first with { Placements = [World.Whole(item, 6, 5, 3)] }] } };
        IReadOnlyList<ManifestEntry> contone = await bench.MakeAsync(Speckle(bench), run);
        IReadOnlyList<ManifestEntry> made = (await bench.DotsAsync(bench.Maker(new PaintedStream(Speckle(bench))), run, contone)).Value;
        string[] black = [.. made.Where(f => f is { What: "dots", Ink: "Black" }).Select(f => Bench.Tool("stat", "-c", "%i", bench.InRun(f.Name)).Trim())];
        Assert.Equal(3, black.Length);
        Assert.Equal(black[0], black[1]);
        Assert.NotEqual(black[0], black[2]);
    }

    [Fact]
    public async Task Any_number_of_workers_gives_the_same_bytes()
    {
        using Bench bench = new();
        RunContext run = Mixed(7, 14);
        IReadOnlyList<ManifestEntry> contone = await bench.MakeAsync(Speckle(bench), run);
        IReadOnlyList<ManifestEntry> one = (await bench.DotsAsync(bench.Maker(new PaintedStream(Speckle(bench)), 1), run, contone)).Value;
        IReadOnlyList<ManifestEntry> five = (await bench.DotsAsync(bench.Maker(new PaintedStream(Speckle(bench)), 5), run, one)).Value;
        Assert.Equal(one, five);
    }
}
