using Laydown.Raster.Separation;
using Laydown.Raster.Sums;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Separation;

/// <summary>Stages that look at one pixel alone: wide kernels against plain ones, and both against what is told of them.</summary>
public sealed class PointwiseStagesLawTests
{
    public static TheoryData<int, double, int> Limits() => new()
    {
        { 1, 50, -1 }, { 1, 0, 0 }, { 4, 100, 3 }, { 6, 237.3, 3 }, { 7, 40, 0 }, { 7, 300, -1 }, { 8, 260, 7 }, { 64, 6400, -1 }, { 64, 1999.9, 63 },
    };

    [Theory, MemberData(nameof(Limits))]
    public void The_total_limit_is_the_same_at_every_width(int inks, double limitPercent, int black)
    {
        Tile source = Inks(inks, 9, 83);
        ushort[] plain = Through(new TotalInkLimit(limitPercent, black < 0 ? null : black, Lanes.Plain), source);
        foreach (Lanes lanes in LanesHere.All)
            Assert.Equal(plain, Through(new TotalInkLimit(limitPercent, black < 0 ? null : black, lanes), source));
    }

    [Fact]
    public void Quotients_that_are_whole_are_not_cut_by_one()
    {
        // Two and three equal inks over a limit: each ink is the limit's half or third.
        for (int limit = 1; limit < 300; limit++)
        {
            Tile source = new(3, 1, 32);
            for (int x = 0; x < 32; x++)
            {
                for (int ink = 0; ink < 3; ink++)
                    source.Row(ink, 0)[x] = (ushort)(60000 + x);
            }

            ushort[] cut = Through(new TotalInkLimit((limit + 0.0001) * 100.0 / 65535, null, LanesHere.Best), source);
            Assert.All(cut, value => Assert.Equal(limit / 3, value));
        }
    }

    [Fact]
    public void The_limit_of_each_ink_is_the_same_at_every_width_and_cuts_nothing_else()
    {
        Tile source = Inks(5, 7, 83);
        double[] limits = [0, 33.3, 95, 100, 50];
        ushort[] plain = Through(new PerInkLimit(limits, Lanes.Plain), source), before = Values(source);
        for (int i = 0; i < plain.Length; i++)
            Assert.Equal(Math.Min(before[i], (ushort)Math.Floor(limits[i / (7 * 83)] * 65535 / 100)), plain[i]);
        foreach (Lanes lanes in LanesHere.All)
            Assert.Equal(plain, Through(new PerInkLimit(limits, lanes), source));
    }

    [Theory, MemberData(nameof(Limits))]
    public void Eight_bits_are_the_same_at_every_width(int inks, double limitPercent, int black)
    {
        Tile source = new(inks, 9, 83);
        new TotalInkLimit(limitPercent, black < 0 ? null : black).Run(Inks(inks, 9, 83), source);
        byte[] plain = new byte[inks * 83], wide = new byte[inks * 83];
        for (int row = 0; row < 9; row++)
        {
            EightBits.Narrow(source, row, limitPercent, plain, Lanes.Plain);
            foreach (Lanes lanes in LanesHere.All)
            {
                EightBits.Narrow(source, row, limitPercent, wide, lanes);
                Assert.Equal(plain, wide);
            }
        }
    }

    [Fact]
    public void Every_code_is_rounded_to_the_nearest_of_eight_bits_and_down_over_the_limit()
    {
        Tile all = new(1, 1, 65536);
        for (int code = 0; code < 65536; code++)
            all.Row(0, 0)[code] = (ushort)code;
        byte[] near = new byte[65536], down = new byte[65536];
        EightBits.Narrow(all, 0, 100, near);
        EightBits.Narrow(all, 0, 0, down);
        for (int code = 0; code < 65536; code++)
        {
            Assert.Equal((byte)Math.Round(code / 257.0), near[code]);
            Assert.Equal((byte)(code / 257), down[code]);
        }
    }

    [Fact]
    public void Curves_and_splits_give_what_their_tables_hold_for_every_code()
    {
        Tile all = new(1, 1, 65536 + 3);
        for (int code = 0; code < all.Columns; code++)
            all.Row(0, 0)[code] = (ushort)code;
        InkCurve curve = InkCurve.Through([0, 20, 70, 100], 93), same = InkCurve.Straight(100);
        LightInkSplit split = new(0.3, 20, 80);
        ushort[] sent = Through(new InkCurves([curve]), all), left = Through(new InkCurves([same]), all), shared = Through(new LightInks([(0, split)]), all);
        Assert.True(same.LeavesAll && !curve.LeavesAll);
        for (int x = 0; x < all.Columns; x++)
        {
            ushort code = (ushort)x;
            Assert.Equal(curve[code], sent[x]);
            Assert.Equal(code, left[x]);
            Assert.Equal(split.Dark[code], shared[x]);
            Assert.Equal(split.Light[code], shared[all.Columns + x]);
        }
    }

    [Theory]
    [InlineData(83)]
    [InlineData((16 * 32768) + 37)]
    public void Sums_of_ink_are_those_of_plain_adding(int columns)
    {
        // The long row holds full laydown: sums of 32 bits would overflow where they are kept too long.
        Tile tile = Inks(2, 2, columns);
        if (columns > 1000)
            tile.Row(1, 1).Fill(Tile.Full);
        InkSums sums = new(2);
        sums.Take(0, 0, tile);
        int most = 0;
        for (int row = 0; row < 2; row++)
        {
            for (int x = 0; x < columns; x++)
                most = Math.Max(most, tile.Row(0, row)[x] + tile.Row(1, row)[x]);
        }

        Assert.Equal(most / 65535.0, sums.MaxTotal);
        for (int ink = 0; ink < 2; ink++)
        {
            long sum = 0;
            for (int row = 0; row < 2; row++)
            {
                foreach (ushort value in tile.Row(ink, row))
                    sum += value;
            }

            Assert.Equal(sum / (2.0 * columns * 65535), sums.Mean(ink));
        }
    }

    // A third of the pixels full or bare, so that sums reach over every limit.
    private static Tile Inks(int inks, int rows, int columns)
    {
        Tile tile = new(inks, rows, columns);
        for (int ink = 0; ink < inks; ink++)
        {
            for (int row = 0; row < rows; row++)
            {
                Span<ushort> line = tile.Row(ink, row);
                for (int x = 0; x < columns; x++)
                    line[x] = (Picture.Hash(5, 0, row, x) % 3) switch
                    {
                        0 => (Picture.Hash(6, ink, row, x) & 1) == 0 ? (ushort)0 : Tile.Full,
                        1 => (ushort)(Picture.Hash(8, ink, row, x) % 9000),
                        _ => (ushort)Picture.Hash(9, ink, row, x),
                    };
            }
        }

        return tile;
    }

    private static ushort[] Through(ITileStage stage, Tile source)
    {
        Tile target = new(stage.TargetInks(source.Inks), source.Rows, source.Columns);
        stage.Run(source, target);
        return Values(target);
    }

    private static ushort[] Values(Tile tile)
    {
        List<ushort> values = [];
        for (int ink = 0; ink < tile.Inks; ink++)
        {
            for (int row = 0; row < tile.Rows; row++)
                values.AddRange(tile.Row(ink, row));
        }

        return [.. values];
    }
}
