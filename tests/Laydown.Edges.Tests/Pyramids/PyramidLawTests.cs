using Laydown.Edges.Tests.PressFiles;
using Laydown.Formats.TiffWriting;
using Laydown.Output.Pyramids;
using Laydown.Shop.Proof;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.Pyramids;

/// <summary>Levels of press files against means taken one value at a time from what was put into them.</summary>
public sealed class PyramidLawTests
{
    [Theory]
    [InlineData(1101, 1300, 3)]
    [InlineData(512, 512, 1)]
    [InlineData(257, 40, 5)]
    [InlineData(30, 20, 2)]
    public async Task Every_value_of_every_level_of_contone_is_the_rounded_mean_of_what_it_covers(int columns, int rows, int inks)
    {
        using PyramidPictures pictures = new();
        await HoldAsync(pictures, pictures.Contone(columns, rows, inks), columns, rows, inks, (row, column, ink) => PyramidPictures.Value(row, column, ink), 0);
    }

    [Theory]
    [InlineData(1, 1303, 700, DotPacking.None)]
    [InlineData(2, 1303, 700, DotPacking.None)]
    [InlineData(2, 1026, 4200, DotPacking.Deflate)]
    [InlineData(1, 90, 70, DotPacking.PackBits)]
    public async Task Every_value_of_every_level_of_dots_is_the_rounded_mean_of_their_shares(int bits, int columns, int rows, DotPacking packing)
    {
        using PyramidPictures pictures = new();
        double Share(int row, int column, int ink) => 255 * (bits == 1 ? DotPictures.Code(row, column, 1) : PyramidPictures.Shares[DotPictures.Code(row, column, 2)]);

        // Shares are kept to 1/256 of a code, so a mean that lies that near to a half may be rounded either way.
        await HoldAsync(pictures, pictures.Dots(columns, rows, bits, packing), columns, rows, 1, Share, 0.5 / 256);
    }

    [Fact]
    public async Task Levels_above_a_single_band_go_on_from_exact_sums()
    {
        using PyramidPictures pictures = new();
        const int Rows = 300_000, Columns = 3;
        PressFileAt file = pictures.Contone(Columns, Rows, 1);
        int level = LookLevels.CountOf(Columns, Rows) - 1;
        Assert.True(level > 1 + 8);
        byte[] top = (await pictures.Planes.ReadAsync(file, new(level, 0, 0, 1, LookLevels.SideAt(Rows, level)), CancellationToken.None)).Value;
        for (int row = 0; row < top.Length; row++)
        {
            long sum = 0, count = 0;
            for (int y = row << level; y < Math.Min(Rows, (row + 1) << level); y++)
            {
                for (int x = 0; x < Columns; x++, count++)
                    sum += PyramidPictures.Value(y, x, 0);
            }

            Assert.Equal(((2 * sum) + count) / (2 * count), top[row]);
        }
    }

    [Fact]
    public async Task A_part_is_the_same_however_it_is_cut()
    {
        using PyramidPictures pictures = new();
        PressFileAt file = pictures.Contone(1101, 1300, 2);
        PressPart whole = new(1, 0, 0, 551, 650);
        byte[] all = (await pictures.Planes.ReadAsync(file, whole, CancellationToken.None)).Value;
        PressPart part = new(1, 201, 250, 300, 270);
        byte[] cut = (await pictures.Planes.ReadAsync(file, part, CancellationToken.None)).Value;
        for (int ink = 0; ink < 2; ink++)
        {
            for (int y = 0; y < part.Rows; y++)
            {
                Assert.True(all.AsSpan((((ink * 650) + part.Top + y) * 551) + part.Left, part.Columns)
                    .SequenceEqual(cut.AsSpan(((ink * part.Rows) + y) * part.Columns, part.Columns)));
            }
        }
    }

    [Fact]
    public async Task Asked_for_by_many_at_once_it_is_made_once_and_stands_alone()
    {
        using PyramidPictures pictures = new();
        PressFileAt file = pictures.Contone(1101, 1300, 2);
        PressPlanes planes = pictures.Planes;
        byte[][] read = await Task.WhenAll(Enumerable.Range(0, 8).Select(async _ => (await planes.ReadAsync(file, new(2, 0, 0, 200, 200), CancellationToken.None)).Value));
        Assert.All(read, one => Assert.Equal(read[0], one));
        Assert.Equal(planes.PathOf(file), Assert.Single(Directory.GetFiles(pictures.Cache)));

        // Made again it has the same bytes, and a later program takes the one that is there.
        byte[] first = File.ReadAllBytes(planes.PathOf(file));
        DateTime written = File.GetLastWriteTimeUtc(planes.PathOf(file));
        Assert.Equal(read[0], (await pictures.Planes.ReadAsync(file, new(2, 0, 0, 200, 200), CancellationToken.None)).Value);
        Assert.Equal(written, File.GetLastWriteTimeUtc(planes.PathOf(file)));
        File.Delete(planes.PathOf(file));
        Assert.True((await pictures.Planes.ReadyAsync(file, CancellationToken.None)).IsTaken);
        Assert.Equal(first, File.ReadAllBytes(planes.PathOf(file)));
    }

    private static async Task HoldAsync(
        PyramidPictures pictures, PressFileAt file, int columns, int rows, int inks, Func<int, int, int, double> value, double slack)
    {
        PressPlanes planes = pictures.Planes;
        for (int level = 0; level < LookLevels.CountOf(columns, rows); level++)
        {
            int wide = LookLevels.SideAt(columns, level), high = LookLevels.SideAt(rows, level);
            Assert.Equal((wide, high), (((columns - 1) >> level) + 1, ((rows - 1) >> level) + 1));
            for (int top = 0; top < high; top += 1000)
            {
                int many = Math.Min(1000, high - top);
                byte[] found = (await planes.ReadAsync(file, new(level, 0, top, wide, many), CancellationToken.None)).Value;
                Check(found, level, top, (wide, many), (columns, rows), inks, value, slack);
            }
        }
    }

    private static void Check(
        byte[] found, int level, int top, (int Columns, int Rows) part, (int Columns, int Rows) all, int inks, Func<int, int, int, double> value, double slack)
    {
        for (int ink = 0; ink < inks; ink++)
        {
            double total = 0, weight = 0, seen = 0;
            for (int y = 0; y < part.Rows; y++)
            {
                for (int x = 0; x < part.Columns; x++)
                {
                    double sum = 0;
                    int count = 0;
                    for (int row = (top + y) << level; row < Math.Min(all.Rows, (top + y + 1) << level); row++)
                    {
                        for (int column = x << level; column < Math.Min(all.Columns, (x + 1) << level); column++, count++)
                            sum += value(row, column, ink);
                    }

                    byte code = found[(((ink * part.Rows) + y) * part.Columns) + x];
                    double mean = sum / count;
                    Assert.True(mean - 0.5 - slack <= code && code <= mean + 0.5 + slack, Invariant($"level {level}, ink {ink}, {x}, {y}: found {code}, mean {mean}"));
                    Assert.True(slack > 0 || code == Math.Floor(mean + 0.5));
                    total += sum;
                    weight += count;
                    seen += (double)code * count;
                }
            }

            // The whole loses nothing: the mean of a level, each value weighed by what it covers, is that of the file within the rounding.
            Assert.InRange(seen / weight, (total / weight) - 0.5 - slack, (total / weight) + 0.5 + slack);
        }
    }
}
