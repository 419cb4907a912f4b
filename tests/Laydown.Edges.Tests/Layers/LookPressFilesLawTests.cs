using System.Security.Cryptography;
using Laydown.Edges.Tests.PressFiles;
using Laydown.Measures;
using Laydown.Output.PressFiles;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Colour;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Xunit;

namespace Laydown.Edges.Tests.Looks;

/// <summary>Press files of items that are printed from a look.</summary>
public sealed class LookPressFilesLawTests : IDisposable
{
    private const int Ppi = 180, Width = 72, Height = 36;
    private static readonly InkRole[] Roles = [InkRole.Cyan, InkRole.Magenta, InkRole.Yellow, InkRole.Black];

    private readonly Laydown.Edges.Tests.PressFiles.Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Theory]
    [InlineData(SheetFace.First)]
    [InlineData(SheetFace.Second)]
    public async Task Planes_of_the_press_files_are_those_of_the_look_mirrored_where_the_layer_is(SheetFace face)
    {
        bool mirrored = face == SheetFace.Second;
        (ItemRecord item, StoredLook look) = Panel(face, Ppi);
        await bench.MakeAsync(Nobody, Context(item, look));
        byte[] planes = await File.ReadAllBytesAsync(Path.Combine(look.Folder, LookRecord.PlanesFile), TestContext.Current.CancellationToken);
        int first = 0;
        foreach ((int layer, LookedLayer looked) in look.Record.Layers.Index())
        {
            string name = looked.Group == InkGroup.White ? "white" : "colour";
            (byte[] pixels, int width, int height, int bands) = Laydown.Edges.Tests.PressFiles.Bench.Vips(bench.InRun(Invariant($"sheet-01-layer-{layer + 1}-{name}.tif")));
            Assert.Equal((Width, Height, looked.Inks.Count), (width, height, bands));
            for (int i = 0; i < width * height; i++)
            {
                int x = mirrored ? width - 1 - (i % width) : i % width;
                for (int ink = 0; ink < bands; ink++)
                    Assert.Equal(planes[((first + ink) * width * height) + (i / width * width) + x], pixels[(i * bands) + ink]);
            }

            first += bands;
        }
    }

    [Theory]
    [InlineData(90)]
    [InlineData(240)]
    [InlineData(131)]
    public async Task At_another_resolution_the_limit_holds_at_every_pixel_and_the_mean_stays(int ppi)
    {
        (ItemRecord item, StoredLook look) = Panel(SheetFace.First, ppi);
        await bench.MakeAsync(Nobody, Context(item, look));
        byte[] planes = await File.ReadAllBytesAsync(Path.Combine(look.Folder, LookRecord.PlanesFile), TestContext.Current.CancellationToken);
        (byte[] pixels, _, _, int bands) = Laydown.Edges.Tests.PressFiles.Bench.Vips(bench.InRun("sheet-01-layer-1-colour.tif"));
        Assert.All(pixels.Chunk(bands), p => Assert.True(p.Sum(v => v) <= 2.6 * 255));

        // Rounded down by less than a code; what lies at the edge counts a little otherwise when pixels are made more.
        double mean = pixels.Average(p => p), wanted = planes.Take(bands * look.Record.WidthPx * look.Record.HeightPx).Average(p => p);
        Assert.InRange(mean, wanted - 2.5, wanted + 1.5);
    }

    [Fact]
    public async Task Ink_of_quotes_and_plans_is_that_of_the_look()
    {
        (ItemRecord item, StoredLook look) = Panel(SheetFace.First, Ppi);
        LookShelf shelf = new(new Laydown.Shop.ShopFolder(bench.Root));
        LookRecord kept = await PutAsync(shelf, item, look);
        IReadOnlyList<LayerInk> inks = (await new InkMeasure(Nobody, shelf).MeasureAsync(
            item with { LookId = kept.LookId }, World.Condition(light: false), World.Inks, "none.icc", TestContext.Current.CancellationToken)).Value;
        byte[] planes = await File.ReadAllBytesAsync(Path.Combine(look.Folder, LookRecord.PlanesFile), TestContext.Current.CancellationToken);
        int size = look.Record.WidthPx * look.Record.HeightPx;
        Assert.Equal(9, inks.Count);
        for (int plane = 0; plane < 9; plane++)
            Assert.Equal(planes.AsSpan(plane * size, size).ToArray().Average(v => v / 255.0), inks[plane].MeanCoverage, 1e-6);
        Assert.Equal((InkRole.White, 1), (inks[4].Role, inks[4].Layer));
    }

    /// <summary>A solved look says what is to act; the press is sent what makes it act by the curves of its inks.</summary>
    [Fact]
    public async Task With_optics_the_laydown_that_acts_is_that_of_the_look_and_the_ink_counted_is_that_which_is_sent()
    {
        InkLight Ink(InkRole role, double power, double scatter) => new(role, Laydown.Colour.Spectra.Bands.Flat(0.5), Laydown.Colour.Spectra.Bands.Flat(scatter),
            OpticsOrigin.Through, OpticsOrigin.Through, [.. Enumerable.Range(0, 21).Select(i => 100 * Math.Pow(i / 20.0, power))]);
        InkOptics optics = new("curved", "Inks with curves", true, World.Inks.Id, [.. Roles.Select(r => Ink(r, 0.84, 0)), Ink(InkRole.White, 1.12, 6)]);
        (ItemRecord item, StoredLook look) = Panel(SheetFace.First, Ppi);
        await bench.MakeAsync(Nobody, Context(item, look) with { Optics = optics });
        byte[] planes = await File.ReadAllBytesAsync(Path.Combine(look.Folder, LookRecord.PlanesFile), TestContext.Current.CancellationToken);
        (byte[] pixels, int width, int height, int bands) = Laydown.Edges.Tests.PressFiles.Bench.Vips(bench.InRun("sheet-01-layer-1-colour.tif"));
        IReadOnlyList<byte> acting = StackLights.ActingOf(InkRole.Cyan, optics)!;
        int differ = 0;
        for (int i = 0; i < width * height * bands; i++)
        {
            byte wanted = planes[(i % bands * width * height) + (i / bands)];
            differ += pixels[i] == wanted ? 0 : 1;

            // Half a code of what is sent moves what acts by half the curve's steepest rise, 1.6; what acts is rounded once more.
            Assert.InRange(acting[pixels[i]] - wanted, -1.3, 1.3);
        }

        Assert.True(differ > width * height);
        LookShelf shelf = new(new Laydown.Shop.ShopFolder(bench.Root));
        LookRecord kept = await PutAsync(shelf, item, look);
        IReadOnlyList<LayerInk> inks = (await new InkMeasure(Nobody, shelf, _ => optics).MeasureAsync(
            item with { LookId = kept.LookId }, World.Condition(light: false), World.Inks, "none.icc", TestContext.Current.CancellationToken)).Value;
        for (int ink = 0; ink < bands; ink++)
            Assert.Equal(pixels.Where((_, i) => i % bands == ink).Average(v => v / 255.0), inks[ink].MeanCoverage, 0.5 / 255);
    }

    [Fact]
    public async Task Another_look_is_another_input_of_the_run()
    {
        (ItemRecord item, StoredLook look) = Panel(SheetFace.First, Ppi);
        RunContext one = Context(item, look);
        StoredLook changed = look with { Record = look.Record with { Files = [new(LookRecord.PlanesFile, 1, "other")] } };
        CancellationToken none = TestContext.Current.CancellationToken;
        Assert.Equal(await RunContexts.HashAsync(one, none), await RunContexts.HashAsync(Context(item, look), none));
        Assert.NotEqual(await RunContexts.HashAsync(one, none), await RunContexts.HashAsync(Context(item, changed), none));
        Assert.NotEqual(await RunContexts.HashAsync(one, none), await RunContexts.HashAsync(one with { Looks = new Dictionary<string, StoredLook>() }, none));
    }

    [Theory]
    [InlineData("changed", "planes.raw", "planes that were changed")]
    [InlineData("gone", "planes.raw", "no such file")]
    [InlineData("condition", "print condition", "another")]
    [InlineData("limit", "layer 1", "% of ink at a pixel")]
    [InlineData("missing", "look", "L-1, which is not at hand")]
    public async Task A_look_that_cannot_be_trusted_is_refused_and_never_separated_in_its_place(string how, string field, string found)
    {
        (ItemRecord item, StoredLook look) = Panel(SheetFace.First, Ppi, how == "limit" ? 3.2 : 2.6);
        string planes = Path.Combine(look.Folder, LookRecord.PlanesFile);
        RunContext context = Context(item, look);
        if (how == "changed")
            await File.WriteAllBytesAsync(planes, [.. (await File.ReadAllBytesAsync(planes, TestContext.Current.CancellationToken)).Select(b => (byte)(b ^ 1))], TestContext.Current.CancellationToken);
        if (how == "gone")
            File.Delete(planes);
        if (how == "condition")
            context = Context(item, look with { Record = look.Record with { ConditionId = "another" } });
        if (how == "missing")
            context = context with { Looks = new Dictionary<string, StoredLook>() };
        Reading<IReadOnlyList<ManifestEntry>> made = await bench.Maker(Nobody).MakeAsync(context, bench.Runs, new Listener(), TestContext.Current.CancellationToken);
        InputFault fault = Assert.Single(made.Faults);
        Assert.Equal(field, fault.Field);
        Assert.Contains(found, fault.Found, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(bench.Runs, "R-1")));
    }

    // Nothing may be rendered where a look is printed.
    private Painter Nobody => new(bench.Pages, (_, _, _, _, _, _) => throw new InvalidOperationException("A page was rendered."));

    private static RunContext Context(ItemRecord item, StoredLook look) =>
        World.Run(item.Item.Printed, [item], [World.Whole(item, 0, 0)], World.Condition(light: false), Ppi) with
        {
            Looks = new Dictionary<string, StoredLook> { [item.Item.Id] = look },
        };

    /// <summary>A panel of colour, white, colour with speckled planes that keep the limit given.</summary>
    private (ItemRecord Item, StoredLook Look) Panel(SheetFace face, int ppi, double limit = 2.6)
    {
        Layer colour = World.Colour with { Face = face, Mirrored = face == SheetFace.Second }, white = World.White(WhiteSource.Flood) with { Face = face, Mirrored = colour.Mirrored };
        ItemRecord item = World.Item("panel", Width * 25.4 / Ppi, Height * 25.4 / Ppi, [colour, white, colour]) with { LookId = "L-1" };
        int width = Width * ppi / Ppi, height = Height * ppi / Ppi;
        LookedLayer looked = new(face, InkGroup.Colour, 260, [.. Roles.Select(r => new LookPlane(r, r.ToString()))]);
        LookRecord record = LookSamples.Record("panel", width, height) with
        {
            LookId = "L-1",
            Ppi = ppi,
            SizeMm = item.Item.Printed,
            StockId = "test-board",
            InkSetId = "test-inks",
            ConditionId = "test-condition",
            Layers = [looked, new(face, InkGroup.White, 100, [new(InkRole.White, "White")]), looked],
        };
        string folder = Directory.CreateDirectory(Path.Combine(bench.Root, Invariant($"look-{face}-{ppi}"))).FullName;
        byte[] planes = Speckle(width, height, limit);
        File.WriteAllBytes(Path.Combine(folder, LookRecord.PlanesFile), planes);
        LookFile file = new(LookRecord.PlanesFile, planes.Length, Convert.ToHexStringLower(SHA256.HashData(planes)));
        return (item, new(record with { Files = [file] }, folder));
    }

    private static async Task<LookRecord> PutAsync(LookShelf shelf, ItemRecord item, StoredLook look)
    {
        using LookDraft draft = shelf.Begin(item.Item.Id);
        File.Copy(Path.Combine(look.Folder, LookRecord.PlanesFile), draft.File(LookRecord.PlanesFile));
        return await draft.PublishAsync(look.Record with { Files = await draft.FilesAsync(CancellationToken.None) }, CancellationToken.None);
    }

    private static byte[] Speckle(int width, int height, double limit)
    {
        byte[] planes = new byte[9 * width * height];
        for (int i = 0; i < width * height; i++)
        {
            for (int first = 0; first < 9; first += 5)
            {
                byte[] four = [.. Enumerable.Range(0, 4).Select(ink => Painter.Noise("s", Invariant($"{first}{ink}"), i % width, i / width))];
                double scale = four.Sum(v => v) is var sum && sum > limit * 255 ? limit * 255 / sum : limit > 2.6 ? limit * 255 / Math.Max(1, sum) : 1;
                for (int ink = 0; ink < 4; ink++)
                    planes[((first + ink) * width * height) + i] = (byte)Math.Min(255, four[ink] * scale);
            }

            planes[(4 * width * height) + i] = Painter.Noise("w", "w", i % width, i / width);
        }

        return planes;
    }
}
