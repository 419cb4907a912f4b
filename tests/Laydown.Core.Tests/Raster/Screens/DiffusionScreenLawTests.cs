using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Screens;

public sealed class DiffusionScreenLawTests
{
    private const int Margin = DiffusionScreen.Margin;

    [Fact]
    public void All_widths_give_the_same_dots()
    {
        foreach (DropLevels drops in Screened.AllDrops())
        {
            Tile tile = Screened.Random(7, 133 + (2 * Margin), 390 + (2 * Margin), 3);
            tile.PlaceAt(256 - Margin, 128 - Margin);
            byte[] plain = Screened.Bytes(Screened.Run(LayerScreens.Of(Screened.Seven, drops, ScreenKind.Diffusion, Lanes.Plain), tile));
            foreach (Lanes lanes in LanesHere.All)
                Assert.Equal(plain, Screened.Bytes(Screened.Run(LayerScreens.Of(Screened.Seven, drops, ScreenKind.Diffusion, lanes), tile)));
        }
    }

    [Fact]
    public void Dots_do_not_depend_on_how_the_sheet_is_cut()
    {
        ILayerScreen screen = LayerScreens.Of(Screened.Seven, Screened.Two, ScreenKind.Diffusion);
        Tile whole = Screened.Random(7, 300 + (2 * Margin), 333 + (2 * Margin), 5);
        whole.PlaceAt(-Margin, -Margin);
        byte[] expected = Screened.Bytes(Screened.Run(screen, whole));
        DotRows found = new(7, 300, 333, 2);
        foreach ((int row, int rows) in (ValueTuple<int, int>[])[(0, 256), (256, 44)])
        {
            DotRows band = new(7, rows, 333, 2);
            foreach ((int column, int columns) in (ValueTuple<int, int>[])[(0, 128), (128, 205)])
            {
                Tile part = new(7, rows + (2 * Margin), columns + (2 * Margin));
                part.PlaceAt(row - Margin, column - Margin);
                for (int at = 0; at < 7 * part.Rows; at++)
                    whole.Row(at / part.Rows, row + (at % part.Rows)).Slice(column, part.Columns).CopyTo(part.Row(at / part.Rows, at % part.Rows));
                screen.Run(part, rows, columns, band, column);
            }

            for (int ink = 0; ink < 7; ink++)
                band.Plane(ink).CopyTo(found.Plane(ink)[(row * found.Stride)..]);
        }

        Assert.Equal(expected, Screened.Bytes(found));
    }

    [Fact]
    public void The_mean_of_the_dots_is_the_tint()
    {
        // An error leaves each block at its edges, with chance sign: within 10⁻³ over 512 × 512 px, the aim for whole separations.
        foreach (DropLevels drops in Screened.AllDrops())
        {
            foreach (double tone in (double[])[0, 0.03, 0.124, 0.25, 0.4, 0.5, 0.66, 0.81, 0.97, 1])
            {
                ILayerScreen screen = LayerScreens.Of(Screened.One, drops, ScreenKind.Diffusion);
                DotRows dots = Screened.Run(screen, Screened.Flat(512 + (2 * Margin), 512 + (2 * Margin), Dots.Code(tone)), Margin);
                Assert.Equal(tone, Screened.Mean(dots, 0, drops), tone is 0 or 1 ? 0 : 1e-3);
            }
        }
    }

    [Fact]
    public void Bare_beside_full_stays_bare_and_full_stays_full()
    {
        Tile tile = Screened.Flat(128 + (2 * Margin), 128 + (2 * Margin), 0);
        for (int row = 0; row < tile.Rows; row++)
        {
            tile.Row(0, row)[40..60].Fill(Tile.Full);
            tile.Row(0, row)[90..].Fill(20000);
        }

        DotRows dots = Screened.Run(LayerScreens.Of(Screened.One, DropLevels.One, ScreenKind.Diffusion), tile, Margin);
        for (int row = 0; row < 128; row++)
        {
            for (int column = 0; column < 90 - Margin; column++)
                Assert.Equal(column + Margin is >= 40 and < 60 ? 1 : 0, dots[0, row, column]);
        }
    }

    [Fact]
    public void Dots_have_no_direction_and_less_grain_than_an_array()
    {
        // No ring above 0 dB [Ulichney1988]; plain error diffusion fails this at every tone (see the arrays' tests). Grain: own
        // measurement, bound of arrays.
        foreach (double tone in (double[])[.. Dots.Tones, 5 / 8.0, 7 / 8.0])
        {
            DotSpectrum found = Dots.Spectrum(seed => Square(seed, tone), tone);
            Assert.True(found.WorstAnisotropyDb < 0, Invariant($"{tone}: {found.WorstAnisotropyDb} dB"));
            Assert.True(found.MedianAnisotropyDb < -6, Invariant($"{tone}: median {found.MedianAnisotropyDb} dB"));
            Assert.True(tone > 0.25 || found.LowPower <= 0.08, Invariant($"{tone}: grain {found.LowPower}"));
        }
    }

    [Fact]
    public void Seams_between_blocks_are_hardly_seen()
    {
        // What is left after a blur of 5 × 5 px, beside seams (3 px to each side) against everywhere else: own measurement, root mean
        // square.
        foreach (double tone in (double[])[1 / 16.0, 1 / 4.0, 0.4])
        {
            double[] sums = new double[2];
            int[] counts = new int[2];
            for (int seed = 0; seed < 10; seed++)
            {
                double[] dots = Square(seed, tone);
                for (int at = 0; at < dots.Length; at++)
                {
                    int row = at / Dots.Side, column = at % Dots.Side;
                    if (row < 2 || column < 2 || row >= Dots.Side - 2 || column >= Dots.Side - 2)
                        continue;
                    double left = Blurred(dots, row, column) - tone;
                    int seam = Math.Abs(row - 127.5) <= 3 || Math.Abs(column - 127.5) <= 3 ? 1 : 0;
                    sums[seam] += left * left;
                    counts[seam]++;
                }
            }

            double ratio = Math.Sqrt(sums[1] / counts[1] / (sums[0] / counts[0]));
            Assert.True(ratio is > 0.8 and < 1.35, Invariant($"{tone}: {ratio}"));
        }
    }

    private static double Blurred(double[] dots, int row, int column)
    {
        double sum = 0;
        for (int y = -2; y <= 2; y++)
        {
            for (int x = -2; x <= 2; x++)
                sum += dots[((row + y) * Dots.Side) + column + x];
        }

        return sum / 25;
    }

    // Ten seeds: ten arrays that the thresholds follow.
    private static double[] Square(int seed, double tone)
    {
        DiffusionScreen screen = new([Dots.TenArrays[seed]], DropLevels.One, DiffusionTable.Own, LanesHere.Best);
        Tile tile = Screened.Flat(Dots.Side + (2 * Margin), Dots.Side + (2 * Margin), Dots.Code(tone));
        return Dots.Volumes(Screened.Run(screen, tile, Margin), 0, DropLevels.One);
    }
}
