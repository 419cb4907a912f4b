using Laydown.Raster.Masks;
using Laydown.Raster.Scaling;
using Laydown.Raster.Screens;
using Laydown.Raster.Separation;
using Laydown.Raster.Sheets;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Sheets;

/// <summary>The engine against the same sheet put together the long way, and against itself with other tiles and workers.</summary>
public sealed class SheetEngineLawTests
{
    private const int Columns = 301, Rows = 277;

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    public void Equals_the_sheet_put_together_pixel_by_pixel(int screenReach)
    {
        SheetJob job = Job(screenReach);
        bool[,,] wanted = SheetByHand.Dots(job);
        GatheredDots made = Made(new SheetEngine(job, 2), job);
        Assert.Equal(wanted.Cast<bool>(), made.Dots.Cast<bool>());
        Assert.InRange(wanted.Cast<bool>().Count(d => d), Columns * Rows / 20, Columns * Rows * 2);
    }

    [Theory]
    [InlineData(1, 8, 16)]
    [InlineData(2, 64, 64)]
    [InlineData(5, 16, 304)]
    [InlineData(3, 256, 2048)]
    public void Dots_do_not_depend_on_workers_bands_and_tiles(int workers, int bandRows, int tileColumns)
    {
        SheetJob job = Job(3);
        GatheredDots usual = Made(new SheetEngine(job, 1), job);
        Assert.Equal(usual.Dots.Cast<bool>(), Made(new SheetEngine(job, workers, bandRows, tileColumns), job).Dots.Cast<bool>());
    }

    [Theory]
    [InlineData(ScreenKind.Arrays, 1)]
    [InlineData(ScreenKind.Arrays, 2)]
    [InlineData(ScreenKind.Intervals, 1)]
    [InlineData(ScreenKind.Diffusion, 1)]
    [InlineData(ScreenKind.Diffusion, 2)]
    public void The_product_s_own_screens_do_not_show_workers_bands_and_tiles_either(ScreenKind kind, int bits)
    {
        SheetJob near = Job(0);
        ILayerScreen screen = LayerScreens.Of([new("black", 1, null), new("grey", 0.3, 0)], bits == 1 ? DropLevels.One : new([4, 7, 14]), kind);
        SheetJob job = new(Columns, Rows, near.Pictures, near.Pieces, screen);
        (byte[] usual, DotTotals counted) = Packed(new SheetEngine(job, 1), job);
        foreach ((int workers, int bandRows, int tileColumns) in new[] { (2, 128, 128), (3, 256, 2048), (5, 128, 256) })
        {
            (byte[] other, DotTotals totals) = Packed(new SheetEngine(job, workers, bandRows, tileColumns), job);
            Assert.Equal(usual, other);
            Assert.Equal(counted.Of(1).ToArray(), totals.Of(1).ToArray());
        }
    }

    [Fact]
    public void Totals_are_the_dots_there_are()
    {
        SheetJob job = Job(0);
        GatheredDots made = new(job.Screen.Inks, Rows, Columns);
        DotTotals totals = new SheetEngine(job, 3, 16, 64).Run(made, null, TestContext.Current.CancellationToken);
        for (int ink = 0; ink < job.Screen.Inks; ink++)
        {
            int number = ink;
            long Dots(int top, int left, int rows, int columns) => Enumerable.Range(top, rows).Where(y => y is >= 0 and < Rows)
                .Sum(y => Enumerable.Range(left, columns).LongCount(x => x is >= 0 and < Columns && made.Dots[number, y, x]));
            Assert.Equal(Dots(0, 0, Rows, Columns), totals.Of(ink)[1]);
            Assert.Equal((long)Rows * Columns, totals.Of(ink)[0] + totals.Of(ink)[1]);
            for (int piece = 0; piece < job.Pieces.Count; piece++)
            {
                PlacedPiece p = job.Pieces[piece];
                Assert.Equal(Dots(p.Top, p.Left, p.Height, p.Width), totals.Of(piece, ink)[1]);
            }
        }
    }

    [Fact]
    public void Bands_that_are_there_are_not_made_again_and_all_others_once()
    {
        SheetJob job = Job(0);
        GatheredDots made = new(job.Screen.Inks, Rows, Columns, 0, 3, 4, 17);
        List<int> told = [];
        SheetEngine engine = new(job, 4, 16, 64);
        engine.Run(made, told.Add, TestContext.Current.CancellationToken);
        Assert.Equal(Enumerable.Range(0, engine.Bands).Except([0, 3, 4, 17]), made.Bands.Order());
        Assert.Equal(Enumerable.Range(1, engine.Bands), told);
    }

    [Fact]
    public void Cancelled_it_takes_no_further_bands_and_says_so()
    {
        SheetJob job = Job(0);
        using CancellationTokenSource stop = new();
        GatheredDots made = new(job.Screen.Inks, Rows, Columns)
        {
            Taken = count =>
            {
                if (count == 5)
                    stop.Cancel();
            },
        };
        Assert.ThrowsAny<OperationCanceledException>(() => new SheetEngine(job, 2, 8, 16).Run(made, null, stop.Token));
        Assert.InRange(made.Bands.Count, 5, 6);
    }

    [Fact]
    public void A_piece_beyond_the_sheet_leaves_nothing()
    {
        SheetJob job = Job(0);
        SheetJob empty = new(50, 60, job.Pictures, [job.Pieces[0] with { Left = 50 }, job.Pieces[0] with { Top = -job.Pieces[0].Height }], job.Screen);
        Assert.DoesNotContain(true, Made(new SheetEngine(empty, 1), empty).Dots.Cast<bool>());
    }

    private static GatheredDots Made(SheetEngine engine, SheetJob job)
    {
        GatheredDots made = new(job.Screen.Inks, job.Rows, job.Columns);
        engine.Run(made, null, TestContext.Current.CancellationToken);
        return made;
    }

    private static (byte[] Dots, DotTotals Totals) Packed(SheetEngine engine, SheetJob job)
    {
        PackedDots kept = new();
        DotTotals totals = engine.Run(kept, null, TestContext.Current.CancellationToken);
        return (kept.Bytes(job), totals);
    }

    // Pictures at their own size, enlarged, and reduced with a choke; pieces in every way, cut, over each other and over the edges.
    private static SheetJob Job(int screenReach)
    {
        SheetPicture[] pictures =
        [
            new(Picture.Noise(2, 90, 70, 1), 70, 90, ScaleKernel.CatmullRom, [], []),
            new(Picture.Noise(3, 31, 22, 2), 80, 101, ScaleKernel.CatmullRom, [new PickInks([2, 0])], [new Choke(2.3)]),
            new(Picture.Mask(120, 140, 3, 0.6, 9), 140, 120, ScaleKernel.Lanczos3, [new PickInks([0, 0])],
                [new Choke(-1.5), new Choke(5), new MinFeature(4.5), new Feather(7.5, true), new KeepOuts([new(15, 20, 60, 9), new(100, -5, 9, 60)])]),
            new(Picture.Noise(1, 200, 190, 4), 61, 83, ScaleKernel.Lanczos3, [], [new PickInks([0, 0])]),
        ];
        List<PlacedPiece> pieces = [];
        for (int i = 0; i < 16; i++)
        {
            (QuarterTurn turn, bool mirrored, int picture) = ((QuarterTurn)(i % 4), i / 4 % 2 == 1, (i / 3) % 4);
            (int wide, int high) = (pictures[picture].Columns - (i % 5) - 7, pictures[picture].Rows - (i % 3) - 3);
            bool side = turn is QuarterTurn.Left or QuarterTurn.Right;
            pieces.Add(new(Invariant($"{i}"), picture, (i % 4 * 79) - 9, (i / 4 * 73) - 5, side ? high : wide, side ? wide : high, i % 5, i % 3, turn, mirrored));
        }

        return new(Columns, Rows, pictures, pieces, new NearScreen(2, screenReach));
    }
}
