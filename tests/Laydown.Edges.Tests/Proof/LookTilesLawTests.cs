using Laydown.Colour.Spaces;
using Laydown.Edges.Tests.UseCases;
using Laydown.Optics.Looks;
using Laydown.Shop;
using Laydown.Shop.Layers;
using Laydown.Shop.Proof;
using Laydown.Web.Tests.Sample;

namespace Laydown.Edges.Tests.Proof;

/// <summary>Tiles of light: what the optics say of the planes, at every level, whole or absent.</summary>
public sealed class LookTilesLawTests : IAsyncLifetime
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench bench = new();
    private StoredLook look = null!;

    public async ValueTask InitializeAsync() => look = new(
        await SampleLooks.WriteAsync(bench.Folder.Root, "L-1", solved: true), Path.Combine(bench.Folder.Root, "looks", SampleLooks.Item, "L-1"));

    public ValueTask DisposeAsync()
    {
        bench.Dispose();
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task A_tile_is_the_light_of_its_pixels_to_half_a_code()
    {
        LookTiles tiles = Tiles();
        LightTable table = tiles.Table(look.Record).Value;
        byte[] tile = (await tiles.TileAsync(look, 0, 1, 1, None))!;
        float[] told = TileCode.Read(tile, 256, 256, table.RoomMost, table.LampMost);
        byte[] planes = await File.ReadAllBytesAsync(Path.Combine(look.Folder, LookRecord.PlanesFile), None);
        StackLight light = Light();
        float[] day = new float[3 * 256], night = new float[3 * 256];
        for (int y = 0; y < 256; y += 17)
        {
            byte[] row = [.. Enumerable.Range(0, SampleLooks.Planes).SelectMany(p => planes.Skip((((p * look.Record.HeightPx) + 256 + y) * look.Record.WidthPx) + 256).Take(256))];
            light.Row(row, 256, day, night);
            for (int x = 0; x < 256; x++)
            {
                for (int c = 0; c < 3; c++)
                {
                    AssertCode(day[(3 * x) + c], told[(((c * 256) + y) * 256) + x], table.RoomMost);
                    AssertCode(night[(3 * x) + c], told[((((3 + c) * 256) + y) * 256) + x], table.LampMost);
                }
            }
        }
    }

    [Fact]
    public async Task Tiles_cover_the_picture_and_no_more()
    {
        LookTiles tiles = Tiles();
        (int width, int height) = (look.Record.WidthPx, look.Record.HeightPx);
        Assert.Equal(3, tiles.Table(look.Record).Value.Levels);
        for (int level = 0; level < 3; level++)
        {
            int w = LookLevels.SideAt(width, level), h = LookLevels.SideAt(height, level), pixels = 0;
            for (int row = 0; row <= (h - 1) / 256; row++)
            {
                for (int column = 0; column <= (w - 1) / 256; column++)
                {
                    int rows = Math.Min(256, h - (256 * row)), columns = Math.Min(256, w - (256 * column));
                    TileCode.Read((await tiles.TileAsync(look, level, column, row, None))!, rows, columns, 1, 1);
                    pixels += rows * columns;
                }
            }

            Assert.Equal(w * h, pixels);
            Assert.Null(await tiles.TileAsync(look, level, ((w - 1) / 256) + 1, 0, None));
            Assert.Null(await tiles.TileAsync(look, level, 0, ((h - 1) / 256) + 1, None));
        }

        Assert.Null(await tiles.TileAsync(look, 3, 0, 0, None));
        Assert.Null(await tiles.TileAsync(look, -1, 0, 0, None));
        Assert.Null(await tiles.TileAsync(look, 0, -1, 0, None));
    }

    [Fact]
    public async Task A_level_holds_the_means_of_the_level_before_and_is_built_once()
    {
        LookLevels levels = new(bench.Folder);
        string[] paths = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => levels.PathAsync(look, 1, None)));
        Assert.Single(paths.Distinct());
        Assert.Equal(["level-1.raw", "level-2.raw"], Directory.GetFiles(Path.GetDirectoryName(paths[0])!).Select(Path.GetFileName).Order());
        Assert.Single(Directory.GetDirectories(Path.GetDirectoryName(Path.GetDirectoryName(paths[0]))!));

        byte[] planes = await File.ReadAllBytesAsync(Path.Combine(look.Folder, LookRecord.PlanesFile), None), half = await File.ReadAllBytesAsync(paths[0], None);
        (int width, int height) = (look.Record.WidthPx, look.Record.HeightPx);
        (int w, int h) = ((width + 1) / 2, (height + 1) / 2);
        Assert.Equal(SampleLooks.Planes * w * h, half.Length);
        for (int at = 0; at < half.Length; at += 131)
        {
            (int plane, int y, int x) = (at / (w * h), at / w % h, at % w);
            int[] covered = [.. from dy in (int[])[0, 1] from dx in (int[])[0, 1] where (2 * y) + dy < height && (2 * x) + dx < width
                select (int)planes[(((plane * height) + (2 * y) + dy) * width) + (2 * x) + dx]];
            Assert.InRange(half[at], covered.Average() - 0.5, covered.Average() + 0.5);
        }
    }

    [Fact]
    public void A_kept_tile_is_found_and_the_shelf_never_grows_over_its_bound()
    {
        TileShelf shelf = new(1000);
        for (int i = 0; i < 50; i++)
        {
            shelf.Keep(Invariant($"{i}"), new byte[90]);
            Assert.InRange(shelf.Bytes, 90, 1000);
            Assert.NotNull(shelf.Find(Invariant($"{i}")));
            Assert.NotNull(shelf.Find("0"));
        }

        // What is asked for again and again stays; what was not asked for has gone.
        Assert.Null(shelf.Find("1"));
        shelf.Keep("large", new byte[2000]);
        Assert.Null(shelf.Find("large"));
    }

    [Fact]
    public void A_point_tells_inks_spectra_and_the_difference_to_the_wish()
    {
        PointTold told = new PickPoint(new(bench.Catalogue)).At(look, 300, 200).Value;
        Assert.Equal([4, 1, 4], told.Layers.Select(l => l.Inks.Count));
        Assert.Equal(86.3, told.Layers[1].Inks[0].Percent, tolerance: 0.05);
        Assert.Equal((300.5 * 25.4 / 20) - 3, told.XMm, tolerance: 1e-9);
        Assert.All(told.Reflectance.Concat(told.Transmittance), v => Assert.InRange(v, 0, 1));
        Assert.Equal(new Lab(190 / 2.55, -6, -10), told.Day.Wish);
        Assert.Equal(Ciede2000.Between(told.Day.Wish!.Value, told.Day.Lab), told.Day.DeltaE00);

        // The same place as light: what the tiles say and what the point says are one luminance.
        LightTable table = Tiles().Table(look.Record).Value;
        byte[] planes = File.ReadAllBytes(Path.Combine(look.Folder, LookRecord.PlanesFile));
        byte[] spot = [.. Enumerable.Range(0, SampleLooks.Planes).Select(p => planes[(((p * look.Record.HeightPx) + 200) * look.Record.WidthPx) + 300])];
        float[] day = new float[3], night = new float[3];
        Light().Row(spot, 1, day, night);
        double Luminance(float[] rgb) => Enumerable.Range(0, 3).Sum(c => rgb[c] * table.RoomToLuminance[c]);
        Assert.Equal(told.Day.CdPerM2, 500 / Math.PI * Luminance(day), tolerance: 0.05);
        Assert.Equal(told.Night.CdPerM2, (20 / Math.PI * Luminance(day)) + (3000 * Luminance(night)), tolerance: 0.2);
    }

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(0, -1)]
    [InlineData(950, 0)]
    [InlineData(0, 635)]
    public void A_point_off_the_picture_is_refused(int x, int y) =>
        Assert.Equal("point", Assert.Single(new PickPoint(new(bench.Catalogue)).At(look, x, y).Faults).Field);

    private static void AssertCode(float light, float told, double most)
    {
        // Half a code of 1023 in the square root, and the rounding of single precision.
        double wanted = Math.Sqrt(Math.Clamp(light / most, 0, 1)), found = Math.Sqrt(told / most);
        Assert.InRange(found, wanted - (0.501 / 1023), wanted + (0.501 / 1023));
    }

    private LookTiles Tiles() => new(new(bench.Catalogue), new(bench.Folder));

    private StackLight Light()
    {
        LookOptics optics = new LookLights(bench.Catalogue).Of(look.Record).Value;
        return new(optics.Sheet, optics.Layers, optics.DayScene.Room, optics.NightScene.Lamp, 0.8, optics.ViewedFrom);
    }
}
