using Laydown.Artwork.Pages;
using Laydown.Measures;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Xunit;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Whatever goes wrong with dots, the run's folder stays as it was and nothing half-made is in it.</summary>
public sealed class DotFilesRefusalTests
{
    private static byte Speckle(string page, string plate, int x, int y, int width, int height) => Painter.Noise(page, plate, x, y);

    private static RunContext Small(params NamedSeparation[] separations)
    {
        ItemRecord item = World.Item("T-1-1", 60, 80, [World.White(WhiteSource.Flood), World.Colour], separations: separations);
        return DotBench.In(World.Run(new(70, 90), [item], [World.Whole(item, 5, 5)], World.Condition(400, light: false), 90), 180, 180, 90, 14);
    }

    private static async Task<(IReadOnlyList<ManifestEntry> Files, Dictionary<string, string> Folder)> MadeAsync(Bench bench, RunContext run)
    {
        IReadOnlyList<ManifestEntry> files = await bench.MakeAsync(new Painter(bench.Pages, Speckle), run);
        return (files, Folder(bench));
    }

    private static Dictionary<string, string> Folder(Bench bench) => Directory.GetFiles(Path.Combine(bench.Runs, "R-1"))
        .ToDictionary(f => f, f => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(f))), StringComparer.Ordinal);

    [Theory]
    [InlineData("dots of sheet 1, layer 1")]
    [InlineData("dots of sheet 1, layer 2: band 4 ")]
    [InlineData("hashes")]
    [InlineData("dots to disk")]
    public async Task A_cancel_at_any_step_leaves_the_folder_as_it_was(string step)
    {
        using Bench bench = new();
        (IReadOnlyList<ManifestEntry> files, Dictionary<string, string> before) = await MadeAsync(bench, Small());
        using CancellationTokenSource source = new();
        Listener listener = new(told =>
        {
            if (told.Step.StartsWith(step, StringComparison.Ordinal))
                source.Cancel();
        });
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            bench.DotsAsync(bench.Maker(new PaintedStream(new Painter(bench.Pages, Speckle))), Small(), files, null, listener, source.Token));
        Assert.Equal(before, Folder(bench));
        Assert.Empty(Directory.GetFileSystemEntries(bench.Pages));
    }

    [Fact]
    public async Task No_room_is_refused_before_anything_is_rendered_with_what_is_wanted_and_free()
    {
        using Bench bench = new();
        (IReadOnlyList<ManifestEntry> files, Dictionary<string, string> before) = await MadeAsync(bench, Small());
        Painter painter = new(bench.Pages, Speckle);
        Reading<IReadOnlyList<ManifestEntry>> made = await bench.DotsAsync(bench.Maker(new PaintedStream(painter), free: 1_000_000), Small(), files);
        InputFault fault = Assert.Single(made.Faults);
        Assert.Equal(("disk", "1000000 bytes free"), (fault.Field, fault.Found));
        Assert.Contains("for dots", fault.Wanted, StringComparison.Ordinal);
        Assert.Empty(painter.Requests);
        Assert.Equal(before, Folder(bench));
    }

    [Fact]
    public async Task A_read_error_is_told_and_the_make_can_be_gone_on_with()
    {
        using Bench bench = new();
        (IReadOnlyList<ManifestEntry> files, Dictionary<string, string> before) = await MadeAsync(bench, Small());
        PaintedStream broken = new(new Painter(bench.Pages, Speckle))
        {
            Reading = row =>
            {
                if (row > 300)
                    throw new IOException("the disk cannot read this place");
            },
        };
        Reading<IReadOnlyList<ManifestEntry>> made = await bench.DotsAsync(bench.Maker(broken), Small(), files);
        Assert.Contains("cannot read this place", Assert.Single(made.Faults).Found, StringComparison.Ordinal);
        Assert.Equal(before, Folder(bench));
        Assert.True((await bench.DotsAsync(bench.Maker(new PaintedStream(new Painter(bench.Pages, Speckle))), Small(), files, DotBench.Wish with { Resume = true })).IsTaken);
    }

    [Fact]
    public async Task Plates_that_turn_out_bad_at_their_end_are_refused_and_what_was_made_of_them_is_forgotten()
    {
        using Bench bench = new();
        (IReadOnlyList<ManifestEntry> files, Dictionary<string, string> before) = await MadeAsync(bench, Small());
        InputFault damage = new("T-1-1.pdf", 1, "page", "damage at its end", "a whole page");
        PaintedStream stream = new(new Painter(bench.Pages, Speckle)) { Ends = [damage] };
        Assert.Equal([damage], (await bench.DotsAsync(bench.Maker(stream), Small(), files)).Faults);
        Assert.Equal(before, Folder(bench));
        Assert.Empty(Directory.GetFileSystemEntries(bench.Scratch));
    }

    [Fact]
    public async Task A_renderer_that_refuses_gives_its_fault()
    {
        using Bench bench = new();
        (IReadOnlyList<ManifestEntry> files, Dictionary<string, string> before) = await MadeAsync(bench, Small());
        InputFault missing = new("T-1-1.pdf", 1, "Ghostscript", "none", "Ghostscript on this machine");
        PaintedStream stream = new(new Painter(bench.Pages, Speckle) { Refuse = _ => [missing] });
        Assert.Equal([missing], (await bench.DotsAsync(bench.Maker(stream), Small(), files)).Faults);
        Assert.Equal(before, Folder(bench));
    }

    [Fact]
    public async Task A_plate_with_ink_that_no_layer_prints_is_refused_though_nobody_knew_of_it()
    {
        using Bench bench = new();
        (IReadOnlyList<ManifestEntry> files, _) = await MadeAsync(bench, Small());
        PaintedStream stream = new(new Painter(bench.Pages, Speckle, ["Reed Green"]));
        InputFault fault = Assert.Single((await bench.DotsAsync(bench.Maker(stream), Small(), files)).Faults);
        Assert.Contains("Reed Green", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bits_that_the_mode_has_no_drops_for_and_a_second_make_beside_the_first_are_refused()
    {
        using Bench bench = new();
        (IReadOnlyList<ManifestEntry> files, _) = await MadeAsync(bench, Small());
        Painter painter = new(bench.Pages, Speckle);
        InputFault drops = Assert.Single((await bench.DotsAsync(bench.Maker(new PaintedStream(painter)), Small(), files, DotBench.Wish with { Bits = 2 })).Faults);
        Assert.Equal("dropsPl", drops.Field);
        RunContext four = DotBench.In(Small(), 180, 180, 90, 2, 4, 6, 8);
        Assert.Contains("4 drops", Assert.Single((await bench.DotsAsync(bench.Maker(new PaintedStream(painter)), four, files)).Faults).Found, StringComparison.Ordinal);

        string folder = Directory.CreateDirectory(Path.Combine(bench.Scratch, "R-1.dots")).FullName;
        using (File.Open(Path.Combine(folder, "lock"), FileMode.Create, FileAccess.ReadWrite, FileShare.None))
            Assert.Contains("elsewhere", Assert.Single((await bench.DotsAsync(bench.Maker(new PaintedStream(painter)), Small(), files)).Faults).Found, StringComparison.Ordinal);
        Assert.True((await bench.DotsAsync(bench.Maker(new PaintedStream(painter)), Small(), files, DotBench.Wish with { Bits = 1 })).IsTaken);
    }
}
