using System.Net;
using System.Text.Json;
using Laydown.Press.Machines;
using Laydown.Shop.Proof;
using Laydown.Shop.Run;
using Laydown.Web.Tests.Sample;
using SkiaSharp;

namespace Laydown.Web.Tests.Http;

/// <summary>Made sheets over HTTP: what there is of one, its tiles, what is at a place; against what was written into the files.</summary>
public sealed class SheetHttpLawTests(MadeShop shop) : IClassFixture<MadeShop>
{
    private const string Api = "/api/runs/" + MadeSheets.Run + "/sheets/1";
    private const string Contone = Api + "?files=contone";
    private const string Seen = "/runs/" + MadeSheets.Run + "/sheets/1/contone/seen";

    [Fact]
    public async Task A_sheet_says_its_size_inks_and_pieces()
    {
        ServedShop served = shop.Served;
        RunRecord made = shop.Made;
        JsonElement sheet = await SheetAsync(served, Contone);
        var layout = made.Run.Sheets[0];
        Assert.Equal(
            (MadeSheets.Px(layout.Sheet.WidthMm, MadeSheets.Ppi), MadeSheets.Px(layout.Sheet.HeightMm, MadeSheets.Ppi), layout.Placements.Count),
            (sheet.GetProperty("widthPx").GetInt32(), sheet.GetProperty("heightPx").GetInt32(), sheet.GetProperty("pieces").GetArrayLength()));
        Assert.Equal("cyan", sheet.GetProperty("planes")[0].GetProperty("role").GetString());
        Assert.DoesNotContain(served.Shop.Folder, sheet.ToString(), StringComparison.Ordinal);

        // The first piece stands where the layout has it, counted from above.
        JsonElement piece = sheet.GetProperty("pieces")[0];
        Assert.Equal(layout.Sheet.HeightMm - layout.Placements[0].Place.TopMm, piece.GetProperty("yMm").GetDouble(), tolerance: 1e-9);
    }

    [Fact]
    public async Task An_ink_as_grey_is_white_where_bare_and_black_where_full_value_by_value()
    {
        ServedShop served = shop.Served;
        string mark = (await SheetAsync(served, Contone)).GetProperty("mark").GetString()!;
        HttpResponseMessage answer = await served.Client.GetAsync(Invariant($"{Seen}/ink-2/tiles/{mark}/0/1-1.png"));
        Assert.Equal("image/png", answer.Content.Headers.ContentType!.MediaType);
        using SKBitmap tile = SKBitmap.Decode(await answer.Content.ReadAsByteArrayAsync());
        for (int y = 0; y < tile.Height; y++)
        {
            for (int x = 0; x < tile.Width; x++)
                Assert.Equal(255 - MadeSheets.Value(1, 256 + y, 256 + x), tile.GetPixel(x, y).Red);
        }

        // The tile the page reads holds the same to the fineness of its code: 10 bits of the root of linear light.
        byte[] coded = await served.Client.GetByteArrayAsync(Invariant($"{Seen}/ink-2/tiles/{mark}/0/1-1"));
        float[] light = TileCode.Read(coded, tile.Height, tile.Width, (await SheetAsync(served, Contone)).GetProperty("roomMost").GetDouble(), 1);
        for (int at = 0; at < tile.Width * tile.Height; at += 37)
            Assert.Equal(Laydown.Colour.Spaces.Srgb.DecodeChannel(tile.GetPixel(at % tile.Width, at / tile.Width).Green), light[at + (tile.Width * tile.Height)], tolerance: 0.0013);
        Assert.All(light[(3 * tile.Width * tile.Height)..], v => Assert.Equal(0, v));
    }

    [Fact]
    public async Task All_layers_are_seen_in_the_light_of_the_same_model_as_a_look()
    {
        ServedShop served = shop.Served;
        OpenedSheet opened = (await served.Shop.Services.Sheets.Open.OpenAsync(MadeSheets.Run, 1, "contone", CancellationToken.None)).Value;
        using SKBitmap tile = SKBitmap.Decode(await served.Client.GetByteArrayAsync(Invariant($"{Seen}/all/tiles/{opened.Sheet.Mark}/0/0-0.png")));
        float[] room = new float[3], lamp = new float[3];
        foreach ((int x, int y) in new[] { (3, 3), (50, 60), (200, 250) })
        {
            byte[] coverages = [.. opened.Sheet.Planes.Select(p => MadeSheets.Value(p.Number - 1, y, x)).Select((v, i) => opened.Acting[i] is { } acts ? acts[v] : v)];
            opened.Light.Row(coverages, 1, room, lamp);
            Assert.Equal(Laydown.Colour.Spaces.Srgb.EncodeChannel(Math.Clamp(room[1], 0, 1)), tile.GetPixel(x, y).Green);
        }
    }

    [Fact]
    public async Task A_place_tells_what_the_file_has_there()
    {
        ServedShop served = shop.Served;
        RunRecord made = shop.Made;
        Mode mode = served.Shop.Services.Catalogue.Presses.First(p => p.Id == made.Run.PressId).FindMode(made.Run.Mode.ModeId)!;
        JsonElement place = (await JsonAsync(served, Api + "/place?files=contone&x=101&y=77")).GetProperty("result");
        foreach ((JsonElement ink, int i) in place.GetProperty("inks").EnumerateArray().Select((e, i) => (e, i)))
        {
            byte value = MadeSheets.Value(i, 77, 101);
            Assert.Equal(value, ink.GetProperty("code").GetInt32());
            Assert.Equal(value / 2.55, ink.GetProperty("percent").GetDouble(), tolerance: 1e-9);
            Assert.Equal(value / 255.0 * InkVolume.FullMlPerM2(mode), ink.GetProperty("mlPerM2").GetDouble(), tolerance: 1e-9);
        }

        // At a coarser level the mean of what lies there is told, the code stays that of the place itself.
        JsonElement mean = (await JsonAsync(served, Api + "/place?files=contone&x=101&y=77&level=2")).GetProperty("result").GetProperty("inks")[0];
        double sum = Enumerable.Range(0, 16).Sum(i => MadeSheets.Value(0, 76 + (i / 4), 100 + (i % 4)));
        Assert.Equal(Math.Floor((sum / 16) + 0.5) / 2.55, mean.GetProperty("percent").GetDouble(), tolerance: 1e-9);
        Assert.Equal(MadeSheets.Value(0, 77, 101), mean.GetProperty("code").GetInt32());
    }

    [Fact]
    public async Task A_place_names_the_piece_and_the_place_in_its_picture()
    {
        ServedShop served = shop.Served;
        RunRecord made = shop.Made;
        var layout = made.Run.Sheets[0];
        var placed = layout.Placements.First(p => p.Part is null);
        (double x, double y) = (placed.Place.XMm + 30, layout.Sheet.HeightMm - placed.Place.TopMm + 10);
        JsonElement piece = (await JsonAsync(served, Invariant($"{Api}/place?files=contone&xMm={x}&yMm={y}"))).GetProperty("result").GetProperty("piece");
        Assert.Equal(placed.Copy, piece.GetProperty("copy").GetInt32());

        // 30 mm in and 10 mm down on the sheet; turned by a quarter counter-clockwise these change their parts.
        (double across, double up) = placed.Turned ? (placed.Place.HeightMm - 10, placed.Place.WidthMm - 30) : (30, placed.Place.HeightMm - 10);
        across = made.Run.Stack.Layers[0].Mirrored ? (placed.Turned ? placed.Place.HeightMm : placed.Place.WidthMm) - across : across;
        Assert.Equal(across, piece.GetProperty("xMm").GetDouble(), tolerance: 25.4 / MadeSheets.Ppi);
        Assert.Equal(up, piece.GetProperty("yMm").GetDouble(), tolerance: 25.4 / MadeSheets.Ppi);
    }

    [Fact]
    public async Task Dots_are_told_one_by_one_and_in_means()
    {
        ServedShop served = shop.Served;
        JsonElement sheet = await SheetAsync(served, Api);
        Assert.True(sheet.GetProperty("isDots").GetBoolean() && sheet.GetProperty("hasBoth").GetBoolean());
        Assert.Equal(2 * sheet.GetProperty("mmPerPx").GetDouble(), sheet.GetProperty("mmPerPxDown").GetDouble(), tolerance: 0.002);
        for (int x = 500; x < 520; x++)
        {
            JsonElement ink = (await JsonAsync(served, Invariant($"{Api}/place?x={x}&y=90"))).GetProperty("result").GetProperty("inks")[1];
            Assert.Equal((MadeSheets.Dot(1, 90, x), 100.0 * MadeSheets.Dot(1, 90, x)), (ink.GetProperty("code").GetInt32(), ink.GetProperty("percent").GetDouble()));
        }

        JsonElement mean = (await JsonAsync(served, Api + "/place?x=500&y=90&level=4")).GetProperty("result").GetProperty("inks")[0];
        double wanted = Enumerable.Range(0, 256).Average(i => MadeSheets.Dot(0, 80 + (i / 16), 496 + (i % 16)));
        Assert.Equal(100 * wanted, mean.GetProperty("percent").GetDouble(), tolerance: 0.5 / 2.55);
        Assert.False((await SheetAsync(served, Contone)).GetProperty("isDots").GetBoolean());
    }

    [Fact]
    public async Task A_tile_may_be_kept_for_good_and_is_not_sent_twice()
    {
        ServedShop served = shop.Served;
        string path = Invariant($"{Seen}/layer-1/tiles/{(await SheetAsync(served, Contone)).GetProperty("mark").GetString()}/1/0-0");
        HttpResponseMessage tile = await served.Client.GetAsync(path);
        Assert.Contains("immutable", tile.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
        using HttpRequestMessage again = new(HttpMethod.Get, path);
        again.Headers.IfNoneMatch.Add(tile.Headers.ETag!);
        Assert.Equal(HttpStatusCode.NotModified, (await served.Client.SendAsync(again)).StatusCode);
    }

    private static async Task<JsonElement> SheetAsync(ServedShop served, string path) => (await JsonAsync(served, path)).GetProperty("result").GetProperty("sheet");

    private static async Task<JsonElement> JsonAsync(ServedShop served, string path)
    {
        HttpResponseMessage answer = await served.Client.GetAsync(path);
        string text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, Invariant($"{path}: {answer.StatusCode} {text}"));
        return JsonDocument.Parse(text).RootElement;
    }
}
