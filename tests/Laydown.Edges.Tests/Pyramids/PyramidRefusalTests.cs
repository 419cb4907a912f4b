using Laydown.Measures;
using Laydown.Output.Pyramids;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.Pyramids;

/// <summary>Damaged files, parts outside the picture and a make that is broken off: refused by name, and nothing is left behind.</summary>
public sealed class PyramidRefusalTests
{
    [Fact]
    public async Task A_damaged_strip_is_named_and_leaves_no_pyramid()
    {
        using PyramidPictures pictures = new();
        PressFileAt file = pictures.Contone(1101, 1300, 2);
        byte[] bytes = File.ReadAllBytes(file.Path);
        bytes.AsSpan(bytes.Length / 3, 2000).Fill(0xAA);
        File.WriteAllBytes(file.Path, bytes);
        Reading<byte[]> read = await pictures.Planes.ReadAsync(file, new(2, 0, 0, 10, 10), CancellationToken.None);
        Assert.Contains("strip", Assert.Single(read.Faults).ToString(), StringComparison.Ordinal);
        Assert.Equal(Path.GetFileName(file.Path), read.Faults[0].File);
        Assert.Empty(Directory.GetFiles(pictures.Cache));
    }

    [Fact]
    public async Task A_missing_file_and_one_of_another_kind_are_refused()
    {
        using PyramidPictures pictures = new();
        PressFileAt file = pictures.Dots(90, 70, 1);
        Assert.False((await pictures.Planes.ReadyAsync(file with { Path = file.Path + ".gone" }, CancellationToken.None)).IsTaken);
        Assert.Equal("BitsPerSample", Assert.Single((await pictures.Planes.ReadyAsync(file with { DropShares = [] }, CancellationToken.None)).Faults).Field);
    }

    [Fact]
    public async Task A_cancelled_make_leaves_nothing()
    {
        using PyramidPictures pictures = new();
        PressFileAt file = pictures.Contone(1101, 1300, 2);
        PressFileShape shape = pictures.Planes.Shape(file).Value;
        using CancellationTokenSource stop = new();
        await stop.CancelAsync();
        Assert.ThrowsAny<OperationCanceledException>(() => PyramidMaker.Make(
            () => ContoneBase.Open(file.Path), PressPlanes.LayoutOf(file, shape)!, pictures.Planes.PathOf(file), null, stop.Token));
        Assert.Empty(Directory.GetFiles(pictures.Cache));
    }

    [Theory]
    [InlineData(9, 0, 0, 1, 1)]
    [InlineData(-1, 0, 0, 1, 1)]
    [InlineData(1, 550, 0, 2, 1)]
    [InlineData(0, 0, 1300, 1, 1)]
    [InlineData(0, 0, 0, 0, 1)]
    public async Task A_part_outside_the_picture_is_the_callers_mistake(int level, int left, int top, int columns, int rows)
    {
        using PyramidPictures pictures = new();
        PressFileAt file = pictures.Contone(1101, 1300, 1);
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => pictures.Planes.ReadAsync(file, new(level, left, top, columns, rows), CancellationToken.None));
    }

    [Fact]
    public async Task A_pyramid_cut_short_is_made_again()
    {
        using PyramidPictures pictures = new();
        PressFileAt file = pictures.Contone(1101, 1300, 1);
        byte[] first = (await pictures.Planes.ReadAsync(file, new(1, 0, 0, 500, 600), CancellationToken.None)).Value;
        string path = pictures.Planes.PathOf(file);
        File.WriteAllBytes(path, File.ReadAllBytes(path)[..20]);
        Assert.Equal(first, (await pictures.Planes.ReadAsync(file, new(1, 0, 0, 500, 600), CancellationToken.None)).Value);
    }
}
