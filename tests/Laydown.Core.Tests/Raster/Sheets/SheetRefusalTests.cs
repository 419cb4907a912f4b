using Laydown.Raster.Scaling;
using Laydown.Raster.Sheets;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Sheets;

public sealed class SheetRefusalTests
{
    private static readonly SheetPicture Plain = new(Picture.Noise(1, 40, 30, 1), 30, 40, ScaleKernel.CatmullRom, [], []);

    private static readonly PlacedPiece Whole = new("a", 0, 0, 0, 30, 40, 0, 0, QuarterTurn.None, false);

    [Fact]
    public void A_picture_with_other_inks_than_the_screen_is_named() =>
        Assert.Contains("found 1 inks; wanted 2", Assert.Throws<ArgumentException>(() => new SheetJob(10, 10, [Plain], [], new NearScreen(2, 0))).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(0, 0, 30, 40, 1, 0, QuarterTurn.None)]
    [InlineData(0, 0, 30, 40, 0, 0, QuarterTurn.Left)]
    [InlineData(0, 0, 0, 40, 0, 0, QuarterTurn.None)]
    [InlineData(0, 0, 30, 40, 0, -1, QuarterTurn.None)]
    [InlineData(0, 0, 30, int.MaxValue, 0, int.MaxValue, QuarterTurn.None)]
    public void A_piece_that_shows_more_than_its_picture_is_named(int left, int top, int width, int height, int cropLeft, int cropTop, QuarterTurn turn)
    {
        PlacedPiece piece = new("tern/2", 0, left, top, width, height, cropLeft, cropTop, turn, false);
        Assert.Contains("tern/2", Assert.Throws<ArgumentException>(() => new SheetJob(10, 10, [Plain], [piece], new NearScreen(1, 0))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_piece_without_its_picture_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SheetJob(10, 10, [Plain], [Whole with { Picture = 1 }], new NearScreen(1, 0)));

    [Fact]
    public void What_a_picture_fails_with_comes_out_and_stops_the_other_workers()
    {
        Picture broken = new(1, 400, 300, (_, row, _) => row == 333 ? throw new InvalidDataException("row 333 is damaged") : (ushort)9);
        SheetJob job = new(300, 400, [new(broken, 300, 400, ScaleKernel.CatmullRom, [], [])], [Whole with { Width = 300, Height = 400 }], new NearScreen(1, 0));
        GatheredDots made = new(1, 400, 300);
        InvalidDataException failure = Assert.Throws<InvalidDataException>(() => new SheetEngine(job, 2, 8, 64).Run(made, null, TestContext.Current.CancellationToken));
        Assert.Equal("row 333 is damaged", failure.Message);
        Assert.DoesNotContain(41, made.Bands);
    }

    [Fact]
    public void A_grid_that_does_not_divide_the_tiles_is_refused()
    {
        SheetJob job = new(300, 400, [Plain], [Whole], new NearScreen(1, 0));
        Assert.Contains("grid of 8", Assert.Throws<ArgumentException>(() => new SheetEngine(job, 1, 12, 64)).Message, StringComparison.Ordinal);
    }
}
