using Laydown.Artwork.Pages;
using Laydown.Formats.TiffWriting;
using Laydown.Measures;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Whatever goes wrong, a run folder is complete or absent and nothing stays in scratch.</summary>
public sealed class PressFilesRefusalTests
{
    private static byte Speckle(string page, string plate, int x, int y, int width, int height) => Painter.Noise(page, plate, x, y);

    private static (ItemRecord Item, RunContext Run) Small()
    {
        ItemRecord item = World.Item("T-1-1", 30, 20, [World.White(WhiteSource.Flood), World.Colour]);
        return (item, World.Run(new(40, 30), [item], [World.Whole(item, 5, 5)], ppi: 90));
    }

    private static void AssertNothingLeft(Bench bench)
    {
        Assert.False(Directory.Exists(Path.Combine(bench.Runs, "R-1")));
        Assert.Empty(Directory.GetFileSystemEntries(bench.Scratch));
        Assert.Empty(Directory.GetFileSystemEntries(bench.Pages));
    }

    [Theory]
    [InlineData("laydown")]
    [InlineData("sheet 1, layer 2")]
    [InlineData("preview")]
    [InlineData("set-up")]
    public async Task A_cancel_at_any_step_leaves_nothing(string step)
    {
        using Bench bench = new();
        using CancellationTokenSource source = new();
        Listener listener = new(told =>
        {
            if (told.Step.StartsWith(step, StringComparison.Ordinal))
                source.Cancel();
        });
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            bench.Maker(new Painter(bench.Pages, Speckle)).MakeAsync(Small().Run, bench.Runs, listener, source.Token));
        AssertNothingLeft(bench);
    }

    [Fact]
    public async Task A_cancel_leaves_the_earlier_folder_as_it_was()
    {
        using Bench bench = new();
        IReadOnlyList<ManifestEntry> first = await bench.MakeAsync(new Painter(bench.Pages, Speckle), Small().Run);
        using CancellationTokenSource source = new();
        Listener listener = new(told =>
        {
            if (told.DonePercent > 80)
                source.Cancel();
        });
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            bench.Maker(new Painter(bench.Pages, (_, _, _, _, _, _) => 7)).MakeAsync(Small().Run, bench.Runs, listener, source.Token));
        foreach (ManifestEntry file in first)
            Assert.StartsWith(file.Sha256, Bench.Tool("sha256sum", bench.InRun(file.Name)), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(bench.Scratch));
    }

    [Theory]
    [InlineData("sheet-01-cut.svg")]
    [InlineData("sheet-01-preview.png")]
    [InlineData("run.json")]
    [InlineData("manifest.json")]
    public async Task A_full_disk_leaves_nothing_and_says_so(string file)
    {
        // The system's own full device stands for the file that no longer fits.
        using Bench bench = new();
        Painter painter = new(bench.Pages, Speckle)
        {
            Before = _ => File.CreateSymbolicLink(Path.Combine(Assert.Single(Directory.GetDirectories(bench.Scratch)), "files", file), "/dev/full"),
        };
        Reading<IReadOnlyList<ManifestEntry>> made = await bench.Maker(painter).MakeAsync(Small().Run, bench.Runs, new Listener(), CancellationToken.None);
        InputFault fault = Assert.Single(made.Faults);
        Assert.Equal((file, "disk"), (fault.File, fault.Field));
        Assert.Contains("no space left", fault.Found, StringComparison.Ordinal);
        AssertNothingLeft(bench);
    }

    [Fact]
    public async Task A_renderer_that_refuses_gives_its_fault_and_leaves_nothing()
    {
        using Bench bench = new();
        InputFault missing = new("T-1-1.pdf", 1, "Ghostscript", "none", "Ghostscript on this machine");
        Painter painter = new(bench.Pages, Speckle) { Refuse = _ => [missing] };
        Reading<IReadOnlyList<ManifestEntry>> made = await bench.Maker(painter).MakeAsync(Small().Run, bench.Runs, new Listener(), CancellationToken.None);
        Assert.Equal([missing], made.Faults);
        AssertNothingLeft(bench);
    }

    [Fact]
    public async Task A_separation_that_is_not_there_is_refused_by_name()
    {
        using Bench bench = new();
        ItemRecord item = World.Item(
            "T-1-1", 30, 20, [World.White(WhiteSource.NamedSeparation, separation: "White"), World.Colour], separations: [new("Cut", SeparationRole.Cut, null, null)]);
        RunContext run = World.Run(new(40, 30), [item], [World.Whole(item, 5, 5)], ppi: 90);
        Reading<IReadOnlyList<ManifestEntry>> made = await bench.Maker(new Painter(bench.Pages, Speckle, ["Cut"])).MakeAsync(run, bench.Runs, new Listener(), CancellationToken.None);
        InputFault fault = Assert.Single(made.Faults);
        Assert.Equal("Cut", fault.Found);
        Assert.Contains("\"White\"", fault.Wanted, StringComparison.Ordinal);
        AssertNothingLeft(bench);
    }

    [Theory]
    [InlineData(SeparationRole.Colour, true)]
    [InlineData(SeparationRole.Unknown, true)]
    [InlineData(SeparationRole.Legend, false)]
    [InlineData(SeparationRole.Cut, false)]
    public async Task A_colour_that_no_layer_would_print_is_refused_and_lines_for_people_are_not(SeparationRole role, bool refused)
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 30, 20, [World.Colour], separations: [new("Reed Green", role, null, null)]);
        RunContext run = World.Run(new(40, 30), [item], [World.Whole(item, 5, 5)], ppi: 90);
        Reading<IReadOnlyList<ManifestEntry>> made =
            await bench.Maker(new Painter(bench.Pages, Speckle, ["Reed Green"])).MakeAsync(run, bench.Runs, new Listener(), CancellationToken.None);
        Assert.Equal(refused, !made.IsTaken);
        Assert.All(made.Faults, f => Assert.Contains("Reed Green", f.Found, StringComparison.Ordinal));
        if (refused)
            AssertNothingLeft(bench);
    }

    [Fact]
    public async Task A_press_without_the_channel_is_refused()
    {
        using Bench bench = new();
        RunContext run = Small().Run;
        run = run with { Press = run.Press with { Channels = [.. run.Press.Channels.Where(c => c.Role != Laydown.Press.Inks.InkRole.White)] } };
        Reading<IReadOnlyList<ManifestEntry>> made = await bench.Maker(new Painter(bench.Pages, Speckle)).MakeAsync(run, bench.Runs, new Listener(), CancellationToken.None);
        Assert.Equal("channels", Assert.Single(made.Faults).Field);
        AssertNothingLeft(bench);
    }

    [Fact]
    public void Scratch_of_a_killed_maker_is_swept_and_that_of_a_living_one_is_not()
    {
        using Bench bench = new();
        Directory.CreateDirectory(Path.Combine(bench.Scratch, "R-1.dead", "files"));
        File.WriteAllText(Path.Combine(bench.Scratch, "R-1.dead", "files", "sheet.tif"), "half");
        File.WriteAllText(Path.Combine(bench.Scratch, "R-1.dead.lock"), "");
        Directory.CreateDirectory(Path.Combine(bench.Scratch, "R-2.alive", "files"));
        using (File.Open(Path.Combine(bench.Scratch, "R-2.alive.lock"), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None))
        {
            bench.Maker(new Painter(bench.Pages, Speckle)).Sweep();
            Assert.Equal(["R-2.alive", "R-2.alive.lock"], Directory.GetFileSystemEntries(bench.Scratch).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        }

        bench.Maker(new Painter(bench.Pages, Speckle)).Sweep();
        Assert.Empty(Directory.GetFileSystemEntries(bench.Scratch));
    }

    [Theory]
    [InlineData("../R-1")]
    [InlineData("a/b")]
    [InlineData(".hidden")]
    [InlineData("")]
    public async Task A_run_id_that_is_no_plain_name_is_refused(string id)
    {
        using Bench bench = new();
        RunContext run = Small().Run;
        run = run with { Run = run.Run with { Id = id } };
        await Assert.ThrowsAsync<ArgumentException>(() =>
            bench.Maker(new Painter(bench.Pages, Speckle)).MakeAsync(run, bench.Runs, new Listener(), CancellationToken.None));
    }

    [Fact]
    public void A_stream_that_fails_is_told_and_not_swallowed()
    {
        ContoneHeader header = new(400, 300, 100, ["Cyan", "Magenta"], "test", null);
        byte[] band = new byte[400 * 300 * 2];
        new Random(1).NextBytes(band);
        for (int room = 0; room < 240_000; room += 40_000)
        {
            using Stream stream = new Narrow(room);
            IOException failure = Assert.Throws<IOException>(() =>
            {
                using ContoneTiffWriter writer = new(stream, "test.tif", header);
                writer.WriteBand(band, writer.BandRows);
                writer.Finish();
            });
            Assert.Contains("full", failure.Message, StringComparison.Ordinal);
            Assert.Equal(28, failure.HResult);
        }
    }

    [Fact]
    public void A_header_out_of_range_and_a_band_of_another_height_are_refused()
    {
        ContoneHeader header = new(4, 4, 100, ["Cyan"], "test", null);
        Assert.Throws<ArgumentException>(() => new ContoneTiffWriter(new MemoryStream(), "x", header with { InkNames = ["Türkis"] }));
        Assert.Throws<ArgumentException>(() => new ContoneTiffWriter(new MemoryStream(), "x", header with { InkNames = [] }));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ContoneTiffWriter(new MemoryStream(), "x", header with { Ppi = double.NaN }));
        using ContoneTiffWriter writer = new(new MemoryStream(), "x", header);
        Assert.Throws<ArgumentException>(() => writer.WriteBand(new byte[16], 3));
        Assert.Throws<InvalidOperationException>(writer.Finish);
    }

    /// <summary>A stream that is full after some bytes.</summary>
    private sealed class Narrow(int room) : MemoryStream
    {
        public override void Write(byte[] buffer, int offset, int count)
        {
            if (Position + count > room)
                throw new IOException("the disk is full", 28);
            base.Write(buffer, offset, count);
        }
    }
}
