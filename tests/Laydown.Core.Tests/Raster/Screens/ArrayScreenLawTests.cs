using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Screens;

public sealed class ArrayScreenLawTests
{
    private static readonly ushort[] Tints = [0, 1, 2, 700, 8191, 16384, 21845, 32767, 32768, 32769, 40000, 49151, 65000, 65533, 65534, 65535];

    [Theory, InlineData(ScreenKind.Arrays), InlineData(ScreenKind.Intervals)]
    public void All_widths_give_the_same_dots(ScreenKind kind)
    {
        foreach (DropLevels drops in Screened.AllDrops())
        {
            foreach (int columns in (int[])[1, 7, 32, 203, 512, 775])
            {
                Tile tile = Screened.Random(7, 9, columns, columns);
                tile.PlaceAt(250, 64 * columns);
                byte[] plain = Screened.Bytes(Screened.Run(LayerScreens.Of(Screened.Seven, drops, kind, Lanes.Plain), tile));
                foreach (Lanes lanes in LanesHere.All)
                    Assert.Equal(plain, Screened.Bytes(Screened.Run(LayerScreens.Of(Screened.Seven, drops, kind, lanes), tile)));
            }
        }
    }

    [Theory, InlineData(ScreenKind.Arrays), InlineData(ScreenKind.Intervals)]
    public void Dots_do_not_depend_on_how_the_sheet_is_cut(ScreenKind kind)
    {
        ILayerScreen screen = LayerScreens.Of(Screened.Seven, Screened.Three, kind);
        Tile whole = Screened.Random(7, 300, 600, 5);
        DotRows expected = Screened.Run(screen, whole), found = new(7, 300, 600, 2);
        foreach ((int row, int rows) in (ValueTuple<int, int>[])[(0, 64), (64, 128), (192, 108)])
        {
            DotRows band = new(7, rows, 600, 2);
            foreach ((int column, int columns) in (ValueTuple<int, int>[])[(0, 320), (320, 64), (384, 216)])
                screen.Run(Cut(whole, row, rows, column, columns), rows, columns, band, column);
            for (int ink = 0; ink < 7; ink++)
                band.Plane(ink).CopyTo(found.Plane(ink)[(row * found.Stride)..]);
        }

        Assert.Equal(Screened.Bytes(expected), Screened.Bytes(found));
    }

    [Theory, InlineData(ScreenKind.Arrays), InlineData(ScreenKind.Intervals)]
    public void The_mean_of_the_dots_is_the_tint(ScreenKind kind)
    {
        // Within 10⁻⁴ of full laydown: the aim. One drop must come within half a dot of an array, the best there is.
        foreach (DropLevels drops in Screened.AllDrops())
        {
            ILayerScreen screen = LayerScreens.Of(Screened.Seven, drops, kind);
            double tolerance = drops.Levels == 2 ? 0.5 / 65536 + 1e-12 : 1e-4;
            for (int tint = 0; tint < Tints.Length; tint++)
            {
                ushort[] tones = Enumerable.Range(0, 7).Select(i => Tints[(tint + (3 * i)) % Tints.Length]).ToArray();
                DotRows dots = Screened.Run(screen, Screened.Flat(256, 256, tones));
                for (int ink = 0; ink < 7; ink++)
                    Assert.Equal(tones[ink] / 65535.0, Screened.Mean(dots, ink, drops), tolerance);
            }
        }
    }

    [Fact]
    public void Bare_sets_no_dot_and_full_sets_the_largest_everywhere()
    {
        foreach (ScreenKind kind in (ScreenKind[])[ScreenKind.Arrays, ScreenKind.Intervals])
        {
            foreach (DropLevels drops in Screened.AllDrops())
            {
                ILayerScreen screen = LayerScreens.Of(Screened.Seven, drops, kind);
                DotRows bare = Screened.Run(screen, Screened.Flat(256, 256, new ushort[7]));
                DotRows full = Screened.Run(screen, Screened.Flat(256, 256, Enumerable.Repeat(Tile.Full, 7).ToArray()));
                for (int ink = 0; ink < 7; ink++)
                {
                    Assert.Equal(0, Screened.Mean(bare, ink, drops));
                    Assert.Equal(1, Screened.Mean(full, ink, drops));
                }
            }
        }
    }

    [Fact]
    public void Inks_of_a_chain_share_no_place_while_their_sum_allows()
    {
        ScreenInk[] inks = [new("black", 1, null), new("cyan", 0.6, null), new("magenta", 0.6, null)];
        foreach (DropLevels drops in Screened.AllDrops())
        {
            DotRows dots = Screened.Run(LayerScreens.Of(inks, drops, ScreenKind.Intervals), Screened.Flat(256, 256, 4000, 3000, 2300));
            for (int at = 0; at < 65536; at++)
                Assert.True(Enumerable.Range(0, 3).Count(ink => dots[ink, at >> 8, at & 255] > 0) <= 1);
        }
    }

    [Fact]
    public void Light_and_dark_ink_of_one_hue_share_no_place_while_their_sum_allows()
    {
        ushort[] tones = [20000, 30000, 40000, 1, 40000, 30000, 9];
        DotRows dots = Screened.Run(LayerScreens.Of(Screened.Seven, DropLevels.One, ScreenKind.Arrays), Screened.Flat(256, 256, tones));
        for (int at = 0; at < 65536; at++)
        {
            Assert.False(dots[0, at >> 8, at & 255] + dots[4, at >> 8, at & 255] > 1);
            Assert.False(dots[1, at >> 8, at & 255] + dots[5, at >> 8, at & 255] > 1);
        }
    }

    [Fact]
    public void More_contone_never_takes_a_dot_away()
    {
        ILayerScreen screen = LayerScreens.Of(Screened.One, Screened.Three, ScreenKind.Arrays);
        int[] before = new int[65536];
        for (int tone = 0; tone < 65536; tone += 1985)
        {
            DotRows dots = Screened.Run(screen, Screened.Flat(256, 256, (ushort)tone));
            for (int at = 0; at < 65536; at++)
            {
                int code = dots[0, at >> 8, at & 255];
                Assert.True(code >= before[at]);
                before[at] = code;
            }
        }
    }

    private static Tile Cut(Tile whole, int row, int rows, int column, int columns)
    {
        Tile part = new(whole.Inks, rows, columns);
        part.PlaceAt(row, column);
        for (int ink = 0; ink < whole.Inks; ink++)
        {
            for (int at = 0; at < rows; at++)
                whole.Row(ink, row + at).Slice(column, columns).CopyTo(part.Row(ink, at));
        }

        return part;
    }
}
