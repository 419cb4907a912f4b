using System.Buffers.Binary;
using Laydown.Measures;
using Laydown.Shop.Layers;
using NetVips;
using Xunit;

namespace Laydown.Edges.Tests.Looks;

public sealed class PairPicturesRefusalTests : IDisposable
{
    private readonly PairDesk desk = new();

    public void Dispose() => desk.Dispose();

    private string Grey => desk.Saved("grey.png", 20, 20, (_, _) => (128, 128, 128), (image, path) => image.Pngsave(path, profile: "srgb"));

    private async Task<IReadOnlyList<InputFault>> FaultsAsync(string night, PairWish? wish = null)
    {
        Reading<PairFile> read = await desk.ReadAsync(PairDesk.Request(Grey, night, 20, 20, wish));
        Assert.False(read.IsTaken);
        Assert.Empty(Directory.EnumerateFileSystemEntries(desk.Scratch));
        Assert.All(read.Faults, f => Assert.Equal(Path.GetFileName(night), f.File));
        return read.Faults;
    }

    private async Task<Finding> FindingAsync(string night, string code)
    {
        using PairFile pair = (await desk.ReadAsync(PairDesk.Request(Grey, night, 20, 20))).Value;
        return Assert.Single(pair.Findings, f => f.Code == code);
    }

    [Fact]
    public async Task A_file_that_is_not_there_is_named() =>
        Assert.Equal("no such file", Assert.Single(await FaultsAsync(desk.File("nowhere.png"))).Found);

    [Fact]
    public async Task What_is_no_picture_is_refused() =>
        Assert.Contains("a picture: PNG, JPEG", Assert.Single(await FaultsAsync(desk.Write("words.png", "not a picture at all"u8.ToArray()))).Wanted, StringComparison.Ordinal);

    [Fact]
    public async Task A_picture_cut_short_is_refused_and_leaves_nothing()
    {
        string whole = desk.Saved("noise.png", 200, 200, (x, y) => ((byte)(x * 37), (byte)(y * 91), (byte)(x * y)), (image, path) => image.Pngsave(path, profile: "srgb"));
        byte[] bytes = await File.ReadAllBytesAsync(whole, TestContext.Current.CancellationToken);
        Assert.Contains("cut short", Assert.Single(await FaultsAsync(desk.Write("short.png", bytes[..(bytes.Length / 2)]))).Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_picture_of_a_wildly_other_shape_is_refused_unless_told_how()
    {
        string strip = desk.Saved("strip.png", 90, 20, (_, _) => (128, 128, 128), (image, path) => image.Pngsave(path, profile: "srgb"));
        InputFault fault = Assert.Single(await FaultsAsync(strip));
        Assert.Equal(("width to height", "4.5 to 1"), (fault.Field, fault.Found));
        foreach (PairPlacing told in new[] { PairPlacing.Fit, PairPlacing.Crop, PairPlacing.Stretch })
            (await desk.ReadAsync(PairDesk.Request(Grey, strip, 20, 20, PairDesk.Wish(told)))).Value.Dispose();
    }

    [Fact]
    public async Task An_animation_is_refused_and_says_which_frame_would_be_taken()
    {
        string moving = Animation("moving.webp");
        InputFault fault = Assert.Single(await FaultsAsync(moving));
        Assert.Equal(("frames", "3"), (fault.Field, fault.Found));
        Assert.Contains("--frame", fault.Wanted, StringComparison.Ordinal);

        PairWish second = PairDesk.Wish() with { Night = new("moving.webp", 1, 2) };
        using (PairFile pair = (await desk.ReadAsync(PairDesk.Request(Grey, moving, 20, 20, second))).Value)
            Assert.Equal(53.6, PairDesk.At(pair, 10, 10, night: true).L, 1.5);
        Assert.Contains(await FaultsAsync(moving, PairDesk.Wish() with { Night = new("moving.webp", 1, 4) }), f => f is { Field: "frame", Found: "4 of 3" });
    }

    [Fact]
    public async Task An_animated_png_is_refused()
    {
        byte[] plain = await File.ReadAllBytesAsync(Grey, TestContext.Current.CancellationToken);
        byte[] control = new byte[20];
        BinaryPrimitives.WriteInt32BigEndian(control, 8);
        "acTL"u8.CopyTo(control.AsSpan(4));
        BinaryPrimitives.WriteInt32BigEndian(control.AsSpan(8), 5);
        string moving = desk.Write("moving.png", [.. plain[..33], .. control, .. plain[33..]]);
        Assert.Equal(("frames", "5"), (Assert.Single(await FaultsAsync(moving)).Field, Assert.Single(await FaultsAsync(moving)).Found));
    }

    [Fact]
    public async Task A_picture_without_profile_is_taken_with_a_warning()
    {
        string plain = desk.Saved("plain.jpg", 20, 20, (_, _) => (128, 128, 128), (image, path) => image.Jpegsave(path));
        Assert.Equal(Severity.Warn, (await FindingAsync(plain, "picture-no-profile")).Severity);
    }

    [Fact]
    public async Task A_picture_of_one_bit_is_taken_as_black_and_white_with_a_warning()
    {
        byte[] board = [.. Enumerable.Range(0, 400).Select(i => (byte)((i / 20 / 10) % 2 == 0 ? 255 : 0))];
        string path = desk.File("bits.tif");
        using (Image image = Image.NewFromMemory(board, 20, 20, 1, Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Bw))
            image.Tiffsave(path, bitdepth: 1);
        Assert.Equal(Severity.Warn, (await FindingAsync(path, "picture-one-bit")).Severity);
        using PairFile pair = (await desk.ReadAsync(PairDesk.Request(Grey, path, 20, 20))).Value;
        Assert.Equal(100, PairDesk.At(pair, 3, 3, night: true).L, 0.1);
        Assert.Equal(0, PairDesk.At(pair, 3, 16, night: true).L, 0.1);
    }

    [Fact]
    public async Task Cmyk_is_taken_as_its_condition_prints_it()
    {
        string path = desk.File("cmyk.tif");
        using (Image image = Image.NewFromMemory(new byte[4 * 400], 20, 20, 4, Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Cmyk))
            image.Tiffsave(path);
        await FindingAsync(path, "picture-cmyk");
        using PairFile pair = (await desk.ReadAsync(PairDesk.Request(Grey, path, 20, 20))).Value;
        Assert.Equal(100, PairDesk.At(pair, 3, 3, night: true).L, 0.5);
    }

    [Fact]
    public async Task A_picture_too_large_is_refused_before_it_is_decoded()
    {
        string big = desk.Saved("big.png", 300, 300, (_, _) => (1, 2, 3), (image, path) => image.Pngsave(path));
        Reading<PairFile> read = await new Laydown.Intake.Layers.PairPictures(desk.Limits with { Pixels = 10_000 })
            .ReadAsync(PairDesk.Request(Grey, big, 20, 20), null, TestContext.Current.CancellationToken);
        Assert.Equal("pixels", Assert.Single(read.Faults).Field);
    }

    [Theory]
    [InlineData("one", "1 places")]
    [InlineData("same", "places that lie on one spot or one line")]
    [InlineData("line", "places that lie on one spot or one line")]
    [InlineData("over", "places that turn the night picture over")]
    public async Task Places_that_fit_no_picture_are_refused(string which, string found)
    {
        PairPoint a = new(10, 10, 10, 10, PairUnit.Percent), b = new(90, 10, 90, 10, PairUnit.Percent), c = new(10, 90, 10, 90, PairUnit.Percent);
        IReadOnlyList<PairPoint> points = which switch
        {
            "one" => [a],
            "same" => [a, a],
            "line" => [a, b, new(50, 10, 50, 10, PairUnit.Percent)],
            _ => [a with { DayX = 90 }, b with { DayX = 10 }, c with { DayX = 90 }],
        };
        Assert.Contains(await FaultsAsync(Grey, PairDesk.Wish(PairPlacing.Careful, points)), f => f.Field == "register" && f.Found == found);
    }

    [Fact]
    public async Task A_cancelled_reading_leaves_nothing()
    {
        using CancellationTokenSource stop = new();
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => desk.ReadAsync(PairDesk.Request(Grey, Grey, 20, 20), stop.Token));
        Assert.Empty(Directory.EnumerateFileSystemEntries(desk.Scratch));
    }

    private string Animation(string name)
    {
        byte[] frames = new byte[3 * 20 * 60];
        for (int i = 0; i < frames.Length; i++)
            frames[i] = (byte)(i / 1200 == 1 ? 128 : 255);
        using Image image = Image.NewFromMemory(frames, 20, 60, 3, Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Srgb)
            .Mutate(m => m.Set(GValue.GIntType, "page-height", 20));
        image.Webpsave(desk.File(name));
        return desk.File(name);
    }
}
