using Laydown.Raster.Masks;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster;

/// <summary>Choke and spread against every distance written out.</summary>
public sealed class ChokeLawTests
{
    public static TheoryData<double, uint> Radii
    {
        get
        {
            TheoryData<double, uint> rows = [];
            foreach (double radius in new[] { 1, 1.42, 2, 2.5, 3, 4.99, 5, 7.3, 8.5, 13, 21.7, 34, 60 })
                rows.Add(radius, (uint)(radius * 10));
            return rows;
        }
    }

    [Theory, MemberData(nameof(Radii))]
    public void A_mask_of_bare_and_full_equals_brute_force(double radius, uint seed)
    {
        foreach ((double share, int grain) in new[] { (0.97, 1), (0.8, 9), (0.5, 25), (0.999, 40) })
        {
            Picture mask = Picture.Mask(90, 140, seed, share, grain);
            Assert.Equal(Brute(mask, radius, spread: false), mask.Through([new Choke(radius)], 33, 140));
            Assert.Equal(Brute(mask, radius, spread: true), mask.Through([new Choke(-radius)], 33, 140));
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2.2)]
    [InlineData(5)]
    [InlineData(11.5)]
    public void A_grey_mask_equals_brute_force(double radius)
    {
        Picture mask = Picture.Noise(1, 50, 61, 23);
        Assert.Equal(Brute(mask, radius, spread: false), mask.Through([new Choke(radius)], 20, 30));
        Assert.Equal(Brute(mask, radius, spread: true), mask.Through([new Choke(-radius)], 20, 30));
    }

    [Theory]
    [InlineData(0, 1, 1)]
    [InlineData(1, 1, 1)]
    [InlineData(3.3, 1, 1)]
    [InlineData(8.5, 1, 1)]
    [InlineData(15.9, 1, 1)]
    [InlineData(62, 1, 1)]
    [InlineData(63, 1, 1)]
    [InlineData(85, 1, 1)]
    [InlineData(127, 1, 1)]
    [InlineData(254.9, 1, 1)]
    [InlineData(255, 1, 1)]
    [InlineData(300.25, 1, 1)]
    [InlineData(20, 720, 1080)]
    [InlineData(41.5, 1200, 600)]
    [InlineData(200, 720, 1080)]
    public void Every_width_of_register_gives_the_same_as_the_plain_way(double radius, int acrossDpi, int alongDpi)
    {
        PixelShape shape = new(acrossDpi, alongDpi);
        foreach ((double share, int grain) in new[] { (0.98, 1), (0.7, 40), (0.995, 90) })
        {
            // Widths around those of the registers, with room for the longest reach and little.
            foreach (int columns in new[] { 1, 31, 130, 333 })
            {
                Picture mask = Picture.Mask(75, columns, (uint)(radius * 7), share, grain);
                foreach (double signed in new[] { radius, -radius })
                {
                    ushort[] plain = mask.Through(new Choke(signed, shape, Lanes.Plain));
                    foreach (Lanes lanes in LanesHere.All)
                        Assert.Equal(plain, mask.Through(new Choke(signed, shape, lanes)));
                }
            }
        }
    }

    [Theory]
    [InlineData(1, 1, 1)]
    [InlineData(2.3, 1, 1)]
    [InlineData(8.5, 1, 1)]
    [InlineData(20, 1, 1)]
    [InlineData(41, 1, 1)]
    [InlineData(27.3, 720, 1080)]
    [InlineData(9.4, 720, 1080)]
    [InlineData(6, 1200, 300)]
    public void Grey_masks_come_out_of_every_width_of_register_as_of_the_plain_way(double radius, int acrossDpi, int alongDpi)
    {
        PixelShape shape = new(acrossDpi, alongDpi);
        foreach (int columns in new[] { 5, 33, 300, 700 })
        {
            // Noise, and a plateau with a soft edge: wide parts of one value, full, bare and between.
            Picture noise = Picture.Noise(1, 24, columns, 8);
            Picture soft = new(1, 90, columns, (_, y, x) => (ushort)Math.Clamp((x + (y * 3) - 200) * 700, 0, y < 70 ? 65535 : 30000));

            // Discs of bare and full with edges as scaling leaves them.
            Picture hard = Picture.Mask(90, columns + 2, 12, 0.9, 35);
            Picture scaled = new(1, 90, columns, (_, y, x) => (ushort)((hard[0, y, x] + hard[0, y, x + 1] + hard[0, y, x + 2]) / 3));
            foreach (Picture mask in new[] { noise, soft, scaled })
            {
                foreach (double signed in new[] { radius, -radius })
                {
                    ushort[] plain = mask.Through(new Choke(signed, shape, Lanes.Plain));
                    foreach (Lanes lanes in LanesHere.All)
                        Assert.Equal(plain, mask.Through(new Choke(signed, shape, lanes)));
                }
            }
        }
    }

    [Theory]
    [InlineData(7.6, 720, 1080)]
    [InlineData(12, 1200, 600)]
    [InlineData(5.5, 300, 1200)]
    public void Pixels_that_are_not_square_are_measured_by_their_sides(double radius, int acrossDpi, int alongDpi)
    {
        PixelShape shape = new(acrossDpi, alongDpi);
        double height = acrossDpi / (double)alongDpi;
        Picture mask = Picture.Mask(60, 90, 5, 0.99, 1);
        Picture grey = Picture.Noise(1, 40, 50, 6);
        Assert.Equal(Brute(mask, radius, spread: false, height), mask.Through([new Choke(radius, shape)], 25, 33));
        Assert.Equal(Brute(mask, radius, spread: true, height), mask.Through([new Choke(-radius, shape)], 25, 33));
        Assert.Equal(Brute(grey, radius, spread: false, height), grey.Through([new Choke(radius, shape)], 25, 33));
    }

    [Fact]
    public void A_longer_choke_leaves_nothing_that_a_shorter_one_takes()
    {
        Picture mask = Picture.Mask(80, 120, 31, 0.9, 14);
        ushort[] before = mask.Through(new PickInks([0]));
        foreach (double radius in new[] { 1, 1.5, 2, 2.9, 6, 6.2, 19, 40, 77.7 })
        {
            ushort[] now = mask.Through(new Choke(radius));
            Assert.All(before.Zip(now), pair => Assert.True(pair.Second <= pair.First));
            before = now;
        }

        Assert.Contains(Tile.Full, mask.Through(new Choke(2)));
    }

    [Fact]
    public void Nothing_moves_under_one_pixel_and_the_edge_of_the_picture_is_no_edge_of_the_mask()
    {
        Picture mask = Picture.Mask(40, 40, 2, 0.7, 5);
        Assert.Equal(mask.Through(new Choke(0)), mask.Through(new Choke(0.9)));
        Picture full = new(1, 30, 30, (_, _, _) => Tile.Full);
        Assert.All(full.Through(new Choke(12)), v => Assert.Equal(Tile.Full, v));
    }

    [Fact]
    public void Spread_is_choke_of_the_inverse()
    {
        Picture mask = Picture.Mask(70, 70, 9, 0.6, 11);
        Picture inverse = new(1, 70, 70, (i, y, x) => (ushort)(Tile.Full - mask[i, y, x]));
        Assert.Equal(mask.Through(new Choke(-6.5)), inverse.Through(new Choke(6.5)).Select(v => (ushort)(Tile.Full - v)));
    }

    private static ushort[] Brute(Picture mask, double radius, bool spread, double height = 1)
    {
        ushort[] values = mask.Through(new PickInks([0]));
        ushort[] result = new ushort[values.Length];
        for (int y = 0; y < mask.Rows; y++)
        {
            for (int x = 0; x < mask.Columns; x++)
                result[(y * mask.Columns) + x] = Extreme(values, mask.Rows, mask.Columns, x, y, radius, spread, height);
        }

        return result;
    }

    private static ushort Extreme(ushort[] values, int rows, int columns, int x, int y, double radius, bool spread, double height)
    {
        int reach = (int)(radius / Math.Min(1, height));
        ushort furthest = spread ? Tile.Full : (ushort)0;
        ushort extreme = values[(y * columns) + x];
        for (int v = Math.Max(0, y - reach); v <= Math.Min(rows - 1, y + reach) && extreme != furthest; v++)
        {
            for (int u = Math.Max(0, x - reach); u <= Math.Min(columns - 1, x + reach); u++)
            {
                ushort value = values[(v * columns) + u];
                if ((spread ? value > extreme : value < extreme) && ((u - x) * (u - x)) + ((v - y) * (v - y) * height * height) <= radius * radius)
                    extreme = value;
            }
        }

        return extreme;
    }
}
