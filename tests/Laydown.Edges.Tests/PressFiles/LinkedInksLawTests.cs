using Laydown.Colour.Inversion;
using Laydown.Formats.Icc;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>A condition that was characterised sends what its link says: no curve and no split come on top.</summary>
public sealed class LinkedInksLawTests
{
    private static readonly string[] Names = ["Cyan", "Magenta", "Yellow", "Black", "Light Cyan", "Light Magenta"];

    // Inks of the link for one unit of cyan, magenta, yellow, black: a plane, so every way of reading between nodes agrees.
    private static readonly double[][] Shares =
        [[0.3, 0, 0, 0.1], [0, 0.4, 0, 0], [0, 0, 0.9, 0], [0, 0, 0.05, 0.8], [0.5, 0, 0, 0], [0, 0.6, 0, 0]];

    [Fact]
    public async Task Pixels_are_the_links_inks()
    {
        using Bench bench = new();
        (ItemRecord item, RunContext run) = Small(bench);
        File.WriteAllBytes(Path.Combine(bench.Root, "link.icc"), Link(Names));
        await bench.MakeAsync(new Painter(bench.Pages, Speckle), run);

        (byte[] pixels, int width, int height, int bands) = Bench.Vips(bench.InRun("sheet-01-layer-1-colour.tif"));
        Assert.Equal((6, 107, 71), (bands, width, height));
        Assert.Contains("Light Cyan, Light Magenta", Bench.Tool("tiffinfo", bench.InRun("sheet-01-layer-1-colour.tif")), StringComparison.Ordinal);
        string[] plates = ["Cyan", "Magenta", "Yellow", "Black"];
        for (int y = 0; y < height; y += 7)
        {
            for (int x = 0; x < 106; x += 5)
            {
                for (int ink = 0; ink < 6; ink++)
                {
                    double wanted = plates.Select((p, c) => Shares[ink][c] * Painter.Noise(item.Item.Id + "#1", p, x, y)).Sum();

                    // One code for rounding to 8 bits, one for the link's own 16 bits and the 15 bits between its nodes.
                    Assert.Equal(wanted, pixels[(((y * width) + x) * bands) + ink], 1.1);
                }
            }
        }
    }

    [Theory]
    [InlineData(null, "no such file")]
    [InlineData("Silver", "4 channels to Silver, Magenta, Yellow, Black, Light Cyan, Light Magenta")]
    public async Task A_link_that_cannot_be_taken_leaves_no_run(string? firstInk, string found)
    {
        using Bench bench = new();
        (_, RunContext run) = Small(bench);
        if (firstInk is not null)
            File.WriteAllBytes(Path.Combine(bench.Root, "link.icc"), Link([firstInk, .. Names[1..]]));
        Reading<IReadOnlyList<ManifestEntry>> made = await bench.Maker(new Painter(bench.Pages, Speckle))
            .MakeAsync(run, bench.Runs, new Listener(), TestContext.Current.CancellationToken);
        InputFault fault = Assert.Single(made.Faults);
        Assert.Equal(("link.icc", "device link", found), (fault.File, fault.Field, fault.Found));
        Assert.False(Directory.Exists(Path.Combine(bench.Runs, "R-1")));
    }

    private static byte Speckle(string page, string plate, int x, int y, int width, int height) => Painter.Noise(page, plate, x, y);

    private static (ItemRecord Item, RunContext Run) Small(Bench bench)
    {
        ItemRecord item = World.Item("T-1-1", 30, 20, [World.Colour]);

        // Curves that would show: were they to come on top, every tone in between would change.
        PrintCondition bent = World.Condition(400);
        PrintCondition condition = bent with
        {
            Inks = [.. bent.Inks.Select(i => i with { Curve = [0, 5, 15, 40, 100] })],
            Characterisation = new("a", "invented", new(2026, 11, 25), 100, 0.3, 0.7, 1.5),
            InkProfile = "inks.icc",
            InkLink = "link.icc",
        };
        RunContext run = World.Run(new(30.2, 20), [item], [World.Whole(item, 0, 0)], condition, ppi: 90);
        return (item, run with { ProfilePath = Path.Combine(bench.Root, "none.icc") });
    }

    private static byte[] Link(string[] names)
    {
        float[] table = [.. Enumerable.Range(0, 16).SelectMany(node => Shares.Select(share =>
            (float)Enumerable.Range(0, 4).Sum(c => ((node >> (3 - c)) & 1) * share[c])))];
        float[][] straight = [.. Enumerable.Range(0, 4).Select(_ => new float[] { 0, 1 })];
        return DeviceLinkProfile.Write(new(4, names, straight, 2, table), "link, invented", "none", "cmyk", "inks");
    }
}
