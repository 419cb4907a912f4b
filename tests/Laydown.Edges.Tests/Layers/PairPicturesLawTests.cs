using Laydown.Colour.Spaces;
using Laydown.Edges.Tests.Artwork;
using Laydown.Measures;
using Laydown.Shop.Layers;
using NetVips;
using Xunit;

namespace Laydown.Edges.Tests.Looks;

public sealed class PairPicturesLawTests : IDisposable
{
    // One code of 255 near black is up to 0.4 L*; 16 bits and single precision on the way add a tenth.
    private const double Slack = 0.1;

    private readonly PairDesk desk = new();

    public void Dispose() => desk.Dispose();

    [Fact]
    public async Task Pixels_of_a_tagged_picture_are_the_lab_of_their_srgb()
    {
        (byte, byte, byte)[] colours = [(255, 255, 255), (0, 0, 0), (200, 30, 40), (20, 90, 200), (90, 200, 30), (128, 128, 128)];
        string day = desk.Saved("day.png", 6, 6, (x, _) => colours[x], Tagged), night = desk.Saved("night.png", 6, 6, (_, y) => colours[y], Tagged);
        using PairFile pair = (await desk.ReadAsync(PairDesk.Request(day, night, 6, 6))).Value;
        for (int i = 0; i < colours.Length; i++)
        {
            Near(colours[i], PairDesk.At(pair, i, 2, night: false));
            Near(colours[i], PairDesk.At(pair, 4, i, night: true));
        }

        Assert.Empty(pair.Findings);
    }

    [Fact]
    public async Task White_of_a_picture_is_its_own_white_whatever_profile_it_carries()
    {
        string day = desk.Saved("day.tif", 8, 8, (_, _) => (255, 255, 255), (image, path) => image.Mutate(m => m.Set(GValue.BlobType, "icc-profile-data", File.ReadAllBytes(WorkFolder.RgbProfile))).Tiffsave(path));
        string night = desk.Saved("night.png", 8, 8, (_, _) => (255, 255, 255), Tagged);
        using PairFile pair = (await desk.ReadAsync(PairDesk.Request(day, night, 8, 8))).Value;
        foreach (bool which in new[] { false, true })
        {
            (float l, float a, float b) = PairDesk.At(pair, 3, 3, which);
            Assert.Equal(100, l, Slack);
            Assert.Equal(0, a, Slack);
            Assert.Equal(0, b, Slack);
        }
    }

    [Fact]
    public async Task A_picture_made_smaller_keeps_its_light()
    {
        // A chessboard of black and white is half the light: L* 76.07, not the 50 of a mean over codes.
        string board = desk.Saved("board.png", 256, 256, (x, y) => ((x + y) % 2 == 0) ? ((byte)255, (byte)255, (byte)255) : default, Tagged);
        using PairFile pair = (await desk.ReadAsync(PairDesk.Request(board, board, 32, 32))).Value;
        Assert.Equal(76.07, PairDesk.At(pair, 16, 16, night: false).L, 0.5);
    }

    [Fact]
    public async Task Bleed_is_mirrored_from_the_edge()
    {
        string ramp = desk.Saved("ramp.png", 20, 10, (x, _) => ((byte)(10 * x), (byte)(10 * x), (byte)(10 * x)), Tagged);
        using PairFile pair = (await desk.ReadAsync(PairDesk.Request(ramp, ramp, 28, 18, bleedPx: 4))).Value;
        for (int i = 0; i < 4; i++)
        {
            Assert.Equal(PairDesk.At(pair, 4 + i, 9, night: false), PairDesk.At(pair, 3 - i, 9, night: false));
            Assert.Equal(PairDesk.At(pair, 23 - i, 0, night: true), PairDesk.At(pair, 24 + i, 17, night: true));
        }
    }

    [Fact]
    public async Task Fit_leaves_white_by_day_and_dark_at_night()
    {
        string grey = desk.Saved("grey.png", 20, 20, (_, _) => (128, 128, 128), Tagged);
        using PairFile pair = (await desk.ReadAsync(PairDesk.Request(grey, grey, 40, 20, PairDesk.Wish(PairPlacing.Fit)))).Value;
        Assert.Equal(100, PairDesk.At(pair, 2, 10, night: false).L, Slack);
        Assert.Equal(0, PairDesk.At(pair, 2, 10, night: true).L, Slack);
        Assert.Equal(53.59, PairDesk.At(pair, 20, 10, night: false).L, Slack);
    }

    [Fact]
    public async Task Crop_shows_the_middle_and_stretch_shows_all()
    {
        string halves = desk.Saved("halves.png", 60, 20, (x, _) => x is >= 20 and < 40 ? ((byte)255, (byte)255, (byte)255) : default, Tagged);
        using PairFile cropped = (await desk.ReadAsync(PairDesk.Request(halves, halves, 20, 20, PairDesk.Wish(PairPlacing.Crop)))).Value;
        Assert.All(Enumerable.Range(0, 20), x => Assert.Equal(100, PairDesk.At(cropped, x, 5, night: false).L, Slack));
        using PairFile stretched = (await desk.ReadAsync(PairDesk.Request(halves, halves, 21, 20, PairDesk.Wish(PairPlacing.Stretch)))).Value;
        Assert.Equal(0, PairDesk.At(stretched, 1, 5, night: false).L, 2.0);
        Assert.Equal(100, PairDesk.At(stretched, 10, 5, night: false).L, 2.0);
    }

    [Fact]
    public async Task A_little_other_shape_is_cropped_with_a_warning()
    {
        string wide = desk.Saved("wide.png", 30, 20, (_, _) => (128, 128, 128), Tagged);
        using PairFile pair = (await desk.ReadAsync(PairDesk.Request(wide, wide, 20, 20))).Value;
        Assert.Equal(2, pair.Findings.Count(f => f is { Code: "picture-cropped", Severity: Severity.Warn, Measured: "1.5 to 1" }));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public async Task Named_places_bring_the_night_picture_where_they_say(int count)
    {
        // A plane of colour is carried exactly by any affine map, so the value at a place tells where it came from.
        string day = desk.Saved("day.png", 100, 80, (_, _) => (128, 128, 128), Tagged);
        string night = LabRamp("night.tif", 100, 80);
        PairPoint[] points = [new(20, 25, 30, 20, PairUnit.Percent), new(80, 25, 78, 32, PairUnit.Percent), new(20, 75, 26, 77, PairUnit.Percent)];
        using PairFile pair = (await desk.ReadAsync(PairDesk.Request(day, night, 100, 80, PairDesk.Wish(PairPlacing.Careful, points[..count])))).Value;
        foreach (PairPoint point in points[..count])
        {
            // The corner of a pixel lies between four pixels.
            (double x, double y) = (point.DayX, point.DayY * 0.8);
            double sum = 0;
            foreach ((int dx, int dy, double w) in Around(x - 0.5, y - 0.5))
                sum += w * PairDesk.At(pair, dx, dy, night: true).L;
            double wanted = 10 + (0.5 * (point.NightX - 0.5)) + (0.3 * ((point.NightY * 0.8) - 0.5));
            Assert.Equal(wanted, sum, 0.05);
        }
    }

    [Fact]
    public async Task Places_in_millimetres_are_the_same_as_in_percent()
    {
        string day = desk.Saved("day.png", 100, 80, (_, _) => (128, 128, 128), Tagged), night = LabRamp("night.tif", 100, 80);
        PairRequest percent = PairDesk.Request(day, night, 100, 80, PairDesk.Wish(PairPlacing.Careful, new PairPoint(0, 0, 10, 10, PairUnit.Percent), new(100, 0, 90, 15, PairUnit.Percent)));
        double mm = 25.4, down = 0.8 * 25.4 / 100;
        PairRequest inMm = percent with { Wish = PairDesk.Wish(PairPlacing.Careful, new PairPoint(0, 0, 0.1 * mm, 10 * down, PairUnit.Mm), new(mm, 0, 0.9 * mm, 15 * down, PairUnit.Mm)) };
        using PairFile one = (await desk.ReadAsync(percent)).Value;
        using PairFile other = (await desk.ReadAsync(inMm)).Value;
        for (int y = 0; y < 80; y += 7)
        {
            for (int x = 0; x < 100; x += 7)
                Assert.Equal(PairDesk.At(one, x, y, night: true).L, PairDesk.At(other, x, y, night: true).L, 0.01);
        }

        Assert.Contains(one.Findings, f => f.Code == "picture-uncovered");
    }

    [Fact]
    public async Task What_is_see_through_is_white_by_day_and_dark_at_night()
    {
        string clear = desk.File("clear.png");
        using (Image image = Image.NewFromMemory(new byte[4 * 64], 8, 8, 4, Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Srgb))
            image.Pngsave(clear, profile: "srgb");
        using PairFile pair = (await desk.ReadAsync(PairDesk.Request(clear, clear, 8, 8))).Value;
        Assert.Equal(100, PairDesk.At(pair, 4, 4, night: false).L, Slack);
        Assert.Equal(0, PairDesk.At(pair, 4, 4, night: true).L, Slack);
        Assert.Equal(2, pair.Findings.Count(f => f.Code == "picture-alpha"));
    }

    [Fact]
    public async Task A_page_of_a_pdf_is_taken_with_the_bleed_it_has()
    {
        // 72 × 36 pt trim with 9 pt of bleed on each side: red left of the trim's middle, blue right of it.
        byte[] pdf = HandPdf.Page("/MediaBox[0 0 90 54]/TrimBox[9 9 81 45]/BleedBox[0 0 90 54]", "", "1 0 0 rg 0 0 45 54 re f 0 0 1 rg 45 0 45 54 re f");
        string path = desk.Write("page.pdf", pdf);
        using PairFile pair = (await desk.ReadAsync(PairDesk.Request(path, path, 100 + 24, 50 + 24, bleedPx: 12))).Value;
        Near((255, 0, 0), PairDesk.At(pair, 0, 40, night: false), 0.5);
        Near((255, 0, 0), PairDesk.At(pair, 60, 40, night: false), 0.5);
        Near((0, 0, 255), PairDesk.At(pair, 64, 40, night: true), 0.5);
        Near((0, 0, 255), PairDesk.At(pair, 123, 73, night: true), 0.5);
    }

    [Fact]
    public async Task The_small_pair_is_the_mean_of_the_large()
    {
        string ramp = desk.Saved("ramp.png", 40, 20, (x, y) => ((byte)(6 * x), (byte)(12 * y), 90), Tagged);
        using PairFile pair = (await desk.ReadAsync(PairDesk.Request(ramp, ramp, 40, 20))).Value;
        (int width, int height, float[] small) = pair.Reduced(200, TestContext.Current.CancellationToken);
        Assert.Equal((20, 10), (width, height));
        double sum = 0;
        for (int i = 0; i < 4; i++)
            sum += PairDesk.At(pair, 6 + (i % 2), 4 + (i / 2), night: true).L / 4;
        Assert.Equal(sum, small[(((2 * width) + 3) * PairFile.Values) + 3], 1e-4);
    }

    [Fact]
    public async Task Scratch_is_empty_when_the_pair_is_let_go()
    {
        string grey = desk.Saved("grey.png", 20, 20, (_, _) => (128, 128, 128), Tagged);
        (await desk.ReadAsync(PairDesk.Request(grey, grey, 20, 20))).Value.Dispose();
        Assert.Empty(Directory.EnumerateFileSystemEntries(desk.Scratch));
    }

    private static void Tagged(Image image, string path)
    {
        if (path.EndsWith(".tif", StringComparison.Ordinal))
            image.Tiffsave(path, profile: "srgb");
        else
            image.Pngsave(path, profile: "srgb");
    }

    private string LabRamp(string name, int width, int height)
    {
        float[] lab = new float[3 * width * height];
        for (int i = 0; i < width * height; i++)
            lab[3 * i] = 10 + (0.5f * (i % width)) + (0.3f * (i / width));
        using Image image = Image.NewFromMemory(lab, width, height, 3, Enums.BandFormat.Float).Copy(interpretation: Enums.Interpretation.Lab);
        using Image labs = image.Colourspace(Enums.Interpretation.Labs);
        labs.Tiffsave(desk.File(name));
        return desk.File(name);
    }

    private static IEnumerable<(int X, int Y, double Weight)> Around(double x, double y)
    {
        int left = (int)Math.Floor(x), top = (int)Math.Floor(y);
        double u = x - left, v = y - top;
        return [(left, top, (1 - u) * (1 - v)), (left + 1, top, u * (1 - v)), (left, top + 1, (1 - u) * v), (left + 1, top + 1, u * v)];
    }

    private static void Near((byte R, byte G, byte B) rgb, (float L, float A, float B) found, double slack = Slack)
    {
        // IEC 61966-2-1, as printed there: D65 from linear red, green, blue.
        static double Linear(byte code) => code / 255.0 is var v && v <= 0.04045 ? v / 12.92 : Math.Pow(((code / 255.0) + 0.055) / 1.055, 2.4);
        (double r, double g, double b) = (Linear(rgb.R), Linear(rgb.G), Linear(rgb.B));
        Xyz light = new((0.4124 * r) + (0.3576 * g) + (0.1805 * b), (0.2126 * r) + (0.7152 * g) + (0.0722 * b), (0.0193 * r) + (0.1192 * g) + (0.9505 * b));
        var wanted = Lab.From(Bradford.Adapt(light.Times(100), WhitePoints.Srgb, WhitePoints.Pcs), WhitePoints.Pcs);
        Assert.Equal(wanted.L, found.L, slack);
        Assert.Equal(wanted.A, found.A, slack);
        Assert.Equal(wanted.B, found.B, slack);
    }
}
