using Laydown.Raster.Masks;
using Laydown.Raster.Separation;
using Laydown.Raster.Sums;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster;

public sealed class StageChainLawTests
{
    public static TheoryData<string> Chains => ["colour", "under-image", "grey choke", "spread then choke", "mask picture"];

    private static IReadOnlyList<ITileStage> Stages(string chain) => chain switch
    {
        "colour" =>
        [
            new PickInks([0, 1, 2, 3]),
            new InkCurves([.. Enumerable.Range(0, 4).Select(i => InkCurve.Through([0, 20 + i, 45, 75, 100], 95 - i))]),
            new LightInks([(0, new LightInkSplit(0.3, 20, 80)), (1, new LightInkSplit(0.25, 30, 100))]),
            new PerInkLimit([95, 94, 93, 92, 80, 90]),
            new TotalInkLimit(220, 3),
        ],
        "under-image" => [new AnyInk(), new Threshold(40), new Choke(3.7), new InkCurves([InkCurve.Straight(80)])],
        "grey choke" => [new PickInks([2]), new Choke(2.3)],
        "spread then choke" => [new AnyInk(), new Threshold(99.9), new Choke(-5.2), new Choke(4)],
        _ => [new Lightness(false), new Choke(-1.5)],
    };

    [Theory, MemberData(nameof(Chains))]
    public void Every_tile_size_gives_the_same_values(string chain)
    {
        Picture picture = Picture.Noise(5, 71, 53, 7);
        ushort[] whole = picture.Through(Stages(chain));
        Assert.True(whole.Distinct().Count() > 1);
        foreach ((int rows, int columns) in new[] { (1, 53), (7, 53), (64, 53), (71, 1), (13, 17), (70, 52), (1000, 1000) })
            Assert.Equal(whole, picture.Through(Stages(chain), rows, columns));
    }

    [Fact]
    public void Sums_do_not_depend_on_tiles_and_equal_the_values_added_up()
    {
        Picture picture = Picture.Noise(3, 40, 31, 3);
        foreach ((int rows, int columns) in new[] { (40, 31), (1, 1), (9, 31) })
        {
            InkSums sums = new(3);
            new StageChain([new PickInks([0, 1, 2])]).Run(picture, rows, columns, sums, CancellationToken.None);
            double most = 0;
            double[] added = new double[3];
            for (int y = 0; y < 40; y++)
            {
                for (int x = 0; x < 31; x++)
                {
                    most = Math.Max(most, picture[0, y, x] + picture[1, y, x] + (double)picture[2, y, x]);
                    for (int ink = 0; ink < 3; ink++)
                        added[ink] += picture[ink, y, x];
                }
            }

            for (int ink = 0; ink < 3; ink++)
                Assert.Equal(added[ink] / (40 * 31 * 65535.0), sums.Mean(ink), 1e-12);
            Assert.Equal(most / 65535.0, sums.MaxTotal, 1e-12);
        }
    }

    [Fact]
    public void A_cancelled_run_stops_before_the_next_tile()
    {
        using CancellationTokenSource source = new();
        Counting sink = new(() => source.Cancel());
        Assert.Throws<OperationCanceledException>(() => new StageChain([new Flood()]).Run(Picture.Noise(1, 50, 5, 1), 10, 5, sink, source.Token));
        Assert.Equal(1, sink.Tiles);
    }

    private sealed class Counting(Action after) : ITileSink
    {
        public int Tiles { get; private set; }

        public void Take(int firstRow, int firstColumn, Tile tile)
        {
            Tiles++;
            after();
        }
    }
}
