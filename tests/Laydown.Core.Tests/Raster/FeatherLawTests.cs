using Laydown.Raster.Masks;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster;

/// <summary>Feathered edges against every distance written out, and what must hold of them whatever the mask.</summary>
public sealed class FeatherLawTests
{
    [Theory]
    [InlineData(0, 1, 1)]
    [InlineData(0.5, 1, 1)]
    [InlineData(1, 1, 1)]
    [InlineData(3.4, 1, 1)]
    [InlineData(8, 1, 1)]
    [InlineData(17.5, 1, 1)]
    [InlineData(12, 720, 1080)]
    [InlineData(9.3, 1200, 600)]
    public void Equals_brute_force(double width, int acrossDpi, int alongDpi)
    {
        PixelShape shape = new(acrossDpi, alongDpi);
        foreach ((double share, int grain) in new[] { (0.97, 1), (0.8, 19), (0.995, 1) })
        {
            Picture mask = Picture.Mask(60, 77, 5, share, grain);
            Assert.Equal(Brute(mask, width, acrossDpi / (double)alongDpi), mask.Through([new Feather(width, true, shape)], 17, 40));
        }
    }

    [Theory]
    [InlineData(0, 1, 1)]
    [InlineData(2.2, 1, 1)]
    [InlineData(32, 1, 1)]
    [InlineData(85, 1, 1)]
    [InlineData(254, 1, 1)]
    [InlineData(255.4, 1, 1)]
    [InlineData(290, 1, 1)]
    [InlineData(84, 720, 1080)]
    [InlineData(90, 720, 1080)]
    [InlineData(300, 720, 1080)]
    [InlineData(2040, 1, 1)]
    [InlineData(40, 1200, 600)]
    public void Every_width_of_register_gives_the_same_as_the_plain_way(double width, int acrossDpi, int alongDpi)
    {
        PixelShape shape = new(acrossDpi, alongDpi);
        foreach (int columns in new[] { 1, 31, 130, 333 })
        {
            foreach (Picture mask in new[] { Picture.Mask(75, columns, 3, 0.99, 1), Picture.Mask(75, columns, 4, 0.8, 60), Picture.Noise(1, 20, columns, 5) })
            {
                foreach (bool inward in new[] { true, false })
                {
                    ushort[] plain = mask.Through(new Feather(width, inward, shape, Lanes.Plain));
                    foreach (Lanes lanes in LanesHere.All)
                        Assert.Equal(plain, mask.Through(new Feather(width, inward, shape, lanes)));
                }
            }
        }
    }

    [Fact]
    public void Outward_is_inward_on_the_inverse()
    {
        Picture mask = Picture.Mask(70, 90, 9, 0.6, 23);
        Picture inverse = new(1, 70, 90, (i, y, x) => (ushort)(Tile.Full - mask[i, y, x]));
        Assert.Equal(mask.Through(new Feather(11, false)), inverse.Through(new Feather(11, true)).Select(v => (ushort)(Tile.Full - v)));
    }

    [Fact]
    public void Inward_never_adds_ink_a_wider_one_leaves_less_and_full_returns_past_the_width()
    {
        Picture mask = Picture.Mask(90, 110, 6, 0.9, 37);
        ushort[] before = mask.Through(new Feather(0, true));
        Assert.Equal(Values(mask), before);
        foreach (double width in new[] { 1, 1.5, 4, 9.75, 22, 40 })
        {
            ushort[] now = mask.Through(new Feather(width, true));
            Assert.All(before.Zip(now), pair => Assert.True(pair.Second <= pair.First));
            ushort[] untouched = mask.Through(new Choke(width + 0.5));
            Assert.All(untouched.Zip(now), pair => Assert.True(pair.First == 0 || pair.Second == Tile.Full));
            before = now;
        }
    }

    [Fact]
    public void A_straight_edge_fades_in_even_steps_from_half_a_pixel()
    {
        Picture half = new(1, 5, 40, (_, _, x) => x < 20 ? (ushort)0 : Tile.Full);
        ushort[] row = half.Through(new Feather(8, true));
        for (int x = 20; x < 40; x++)
            Assert.Equal((ushort)Math.Floor((Math.Min(1, (x - 19 - 0.5) / 8) * Tile.Full) + 0.5), row[x]);
    }

    [Fact]
    public void Any_tiling_gives_the_same_and_the_edge_of_the_picture_is_no_edge_of_the_mask()
    {
        Picture mask = Picture.Mask(61, 150, 2, 0.9, 31);
        ushort[] whole = mask.Through(new Feather(13.5, true));
        foreach ((int rows, int columns) in new[] { (1, 150), (7, 64), (61, 1), (20, 33) })
            Assert.Equal(whole, mask.Through([new Feather(13.5, true)], rows, columns));
        Picture full = new(1, 30, 30, (_, _, _) => Tile.Full);
        Assert.All(full.Through(new Feather(12, true)), v => Assert.Equal(Tile.Full, v));
    }

    private static ushort[] Values(Picture mask) =>
        [.. Enumerable.Range(0, mask.Rows * mask.Columns).Select(i => mask[0, i / mask.Columns, i % mask.Columns])];

    private static ushort[] Brute(Picture mask, double width, double height)
    {
        ushort[] values = Values(mask);
        (int X, int Y)[] bare = [.. Enumerable.Range(0, values.Length).Where(i => values[i] == 0).Select(i => (i % mask.Columns, i / mask.Columns))];
        for (int i = 0; i < values.Length; i++)
        {
            (int x, int y) = (i % mask.Columns, i / mask.Columns);
            double square = bare.Select(b => ((b.X - x) * (double)(b.X - x)) + ((b.Y - y) * height * (b.Y - y) * height)).DefaultIfEmpty(1e9).Min();
            double share = (Math.Sqrt(square) - 0.5) / width;
            values[i] = Math.Min(values[i], (ushort)Math.Floor((Math.Clamp(share, 0, 1) * Tile.Full) + 0.5));
        }

        return values;
    }
}
