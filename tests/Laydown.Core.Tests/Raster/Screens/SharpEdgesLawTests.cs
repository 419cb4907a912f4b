using Laydown.Raster.Scaling;
using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Screens;

public sealed class SharpEdgesLawTests
{
    // A source at 200 dpi on a press at 720 dpi: soft flanks of about 4 px.
    private const int Source = 110, Press = 396;

    [Fact]
    public void Edges_of_bars_lie_within_half_a_pixel_and_are_straight()
    {
        Tile soft = Enlarged(BarAt), sharp = Sharpened(soft);
        (double worstSharp, double roughSharp) = EdgeErrors(sharp);
        (double _, double roughSoft) = EdgeErrors(soft);

        // A dot is a pixel wide, so half a pixel is the least that can be promised; and each row must show the same.
        Assert.True(worstSharp <= 0.5 + 1e-9, Invariant($"{worstSharp} px"));
        Assert.Equal(0, roughSharp);
        Assert.True(roughSoft > 0.4, Invariant($"canary: screened flanks without it {roughSoft} px"));
    }

    [Fact]
    public void Small_shapes_keep_their_form()
    {
        // Strokes of 2 px of the source at all angles; dots that are not what the shape asks for.
        Tile soft = Enlarged(StrokeAt);
        int plain = Wrong(soft), kept = Wrong(Sharpened(soft));
        Assert.True(kept * 3 < plain, Invariant($"{kept} of {plain}"));
    }

    [Fact]
    public void Tints_and_soft_blends_keep_every_value()
    {
        Tile tile = new(1, 40, 200);
        for (int row = 0; row < 40; row++)
        {
            for (int column = 0; column < 200; column++)
                tile.Row(0, row)[column] = (ushort)((column * 320) + (row * 30));
        }

        Tile kept = Sharpened(tile);
        for (int row = 0; row < kept.Rows; row++)
            Assert.Equal(tile.Row(0, row + 3).Slice(3, kept.Columns).ToArray(), kept.Row(0, row).ToArray());
    }

    [Fact]
    public void The_edge_of_a_tint_becomes_steep_but_the_tint_stays()
    {
        Tile tile = new(1, 7, 60);
        for (int row = 0; row < 7; row++)
        {
            for (int column = 0; column < 60; column++)
                tile.Row(0, row)[column] = (ushort)(Math.Clamp((column - 28) / 4.0, 0, 1) * 50000);
        }

        Assert.All(Sharpened(tile).Row(0, 0).ToArray(), v => Assert.True(v is 0 or 50000));
    }

    [Fact]
    public void Every_pixel_is_as_if_looked_at_alone()
    {
        Tile tile = Screened.Random(2, 31, 77, 9), found = Sharpened(tile);
        for (int row = 0; row < found.Rows; row++)
        {
            for (int column = 0; column < found.Columns; column++)
            {
                ushort[] around = [.. Enumerable.Range(0, 49).Select(i => tile.Row(1, row + (i / 7))[column + (i % 7)])];
                ushort value = around[24], low = around.Min(), high = around.Max();
                ushort expected = high - low < 32768 ? value : value - low >= high - value ? (high >= 58982 ? Tile.Full : high) : (low <= 6553 ? (ushort)0 : low);
                Assert.Equal(expected, found.Row(1, row)[column]);
            }
        }
    }

    [Fact]
    public void A_contrast_of_nothing_or_beyond_full_is_refused()
    {
        foreach (double contrast in (double[])[0, -1, 100.1, double.NaN])
            Assert.Throws<ArgumentOutOfRangeException>(() => new SharpEdges(contrast));
    }

    private static bool BarAt(int row, int column) => (column - 5) % 9 is >= 0 and < 4;

    private static bool StrokeAt(int row, int column)
    {
        double y = (row % 22) - 10.5, x = (column % 22) - 10.5, angle = (((row / 22) * 5) + (column / 22)) * Math.PI / 25;
        return Math.Abs((x * Math.Sin(angle)) + (y * Math.Cos(angle))) < 1.2 && (x * x) + (y * y) < 90;
    }

    private static Tile Enlarged(Func<int, int, bool> shape)
    {
        AxisScale axis = new(Source, Press, ScaleKernel.CatmullRom);
        (int first, int count) = axis.SourceRange(0, Press);
        Tile source = new(1, count, count), target = new(1, Press, Press);
        source.PlaceAt(first, first);
        for (int row = 0; row < count; row++)
        {
            for (int column = 0; column < count; column++)
                source.Row(0, row)[column] = shape(Math.Clamp(row + first, 0, Source - 1), Math.Clamp(column + first, 0, Source - 1)) ? Tile.Full : (ushort)0;
        }

        new Scaler(axis, axis).Run(source, target);
        return target;
    }

    private static Tile Sharpened(Tile tile)
    {
        SharpEdges stage = new(50);
        Tile target = new(tile.Inks, tile.Rows - 6, tile.Columns - 6);
        stage.Run(tile, target);
        return target;
    }

    // Position of each edge of the bars in each row of screened dots: largest distance from where the source has it, and its scatter
    // between rows, px.
    private static (double Worst, double Rough) EdgeErrors(Tile tile)
    {
        int offset = (Press - tile.Columns) / 2;
        DotRows dots = Screened.Run(LayerScreens.Of(Screened.One, DropLevels.One, ScreenKind.Arrays), tile);
        double worst = 0, squares = 0;
        int many = 0;
        for (int edge = 14; edge < Source - 12; edge += 9)
        {
            // Ink of the bar from 4 px before its beginning to its middle: how much is missing is where the edge lies.
            double wanted = edge * (double)Press / Source;
            int from = (int)Math.Round(wanted) - 4, to = from + 10;
            double[] found = [.. Enumerable.Range(20, 300).Select(row => to - (double)Enumerable.Range(from, to - from).Count(c => dots[0, row, c - offset] != 0))];
            double mean = found.Average();
            worst = Math.Max(worst, found.Max(f => Math.Abs(f - wanted)));
            squares += found.Sum(f => (f - mean) * (f - mean));
            many += found.Length;
        }

        return (worst, Math.Sqrt(squares / many));
    }

    // Dots that differ from the shape as its flank's middle cuts it.
    private static int Wrong(Tile tile)
    {
        int offset = (Press - tile.Columns) / 2;
        Tile soft = Enlarged(StrokeAt);
        DotRows dots = Screened.Run(LayerScreens.Of(Screened.One, DropLevels.One, ScreenKind.Arrays), tile);
        int wrong = 0;
        for (int row = 10; row < Press - 10; row++)
        {
            for (int column = 10; column < Press - 10; column++)
                wrong += soft.Row(0, row)[column] >= 32768 == (dots[0, row - offset, column - offset] != 0) ? 0 : 1;
        }

        return wrong;
    }
}
