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

    private static ushort[] Brute(Picture mask, double radius, bool spread)
    {
        ushort[] values = mask.Through(new PickInks([0]));
        ushort[] result = new ushort[values.Length];
        for (int y = 0; y < mask.Rows; y++)
        {
            for (int x = 0; x < mask.Columns; x++)
                result[(y * mask.Columns) + x] = Extreme(values, mask.Rows, mask.Columns, x, y, radius, spread);
        }

        return result;
    }

    private static ushort Extreme(ushort[] values, int rows, int columns, int x, int y, double radius, bool spread)
    {
        int reach = (int)radius;
        ushort furthest = spread ? Tile.Full : (ushort)0;
        ushort extreme = values[(y * columns) + x];
        for (int v = Math.Max(0, y - reach); v <= Math.Min(rows - 1, y + reach) && extreme != furthest; v++)
        {
            for (int u = Math.Max(0, x - reach); u <= Math.Min(columns - 1, x + reach); u++)
            {
                ushort value = values[(v * columns) + u];
                if ((spread ? value > extreme : value < extreme) && ((u - x) * (u - x)) + ((v - y) * (v - y)) <= radius * radius)
                    extreme = value;
            }
        }

        return extreme;
    }
}
