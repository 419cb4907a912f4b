using Laydown.Raster.Scaling;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Scaling;

/// <summary>Scaling against double arithmetic, against itself in other widths and tiles, and what it must leave alone.</summary>
public sealed class ScalerLawTests
{
    public static TheoryData<int, int, ScaleKernel> Ways()
    {
        TheoryData<int, int, ScaleKernel> ways = [];
        foreach (ScaleKernel kernel in Enum.GetValues<ScaleKernel>())
        {
            foreach ((int from, int to) in new[] { (37, 133), (50, 50), (41, 42), (9, 700), (300, 84), (97, 13), (1, 40), (64, 1), (2, 3) })
                ways.Add(from, to, kernel);
        }

        return ways;
    }

    /// <summary>Weights are rounded to 1/16384 and values to 15 bits: four codes of 65535 for four neighbours, more for more; one code of 255 is 257 of these.</summary>
    [Theory, MemberData(nameof(Ways))]
    public void Lies_within_a_quarter_code_of_255_of_double_arithmetic(int from, int to, ScaleKernel kernel)
    {
        Picture picture = Picture.Noise(1, from + 3, from, 11);
        AxisScale rows = new(picture.Rows, to, kernel), columns = new(picture.Columns, to, kernel);
        ushort[] made = Scaled(picture, rows, columns, LanesHere.Best);
        double worst = 0;
        for (int y = 0; y < to; y++)
        {
            for (int x = 0; x < to; x++)
                worst = Math.Max(worst, Math.Abs(made[(y * to) + x] - Exact(picture, y, x, to, kernel)));
        }

        Assert.InRange(worst, 0, 64);
    }

    [Theory, MemberData(nameof(Ways))]
    public void All_widths_give_the_same(int from, int to, ScaleKernel kernel)
    {
        Picture picture = Picture.Noise(3, from + 3, from, 12);
        AxisScale rows = new(picture.Rows, to + 5, kernel), columns = new(picture.Columns, to, kernel);
        ushort[] plain = Scaled(picture, rows, columns, Lanes.Plain);
        foreach (Lanes lanes in LanesHere.All)
            Assert.Equal(plain, Scaled(picture, rows, columns, lanes));
    }

    [Theory]
    [InlineData(17, 40)]
    [InlineData(5, 7)]
    public void Any_cut_of_tiles_gives_the_same(int tileRows, int tileColumns)
    {
        Picture picture = Picture.Noise(2, 45, 51, 13);
        AxisScale rows = new(45, 161, ScaleKernel.CatmullRom), columns = new(51, 183, ScaleKernel.CatmullRom);
        ushort[] whole = Scaled(picture, rows, columns, LanesHere.Best);
        Scaler scaler = new(rows, columns);
        for (int top = 0; top < 161; top += tileRows)
        {
            for (int left = 0; left < 183; left += tileColumns)
            {
                Tile part = new(2, Math.Min(tileRows, 161 - top), Math.Min(tileColumns, 183 - left));
                part.PlaceAt(top, left);
                Run(scaler, picture, rows, columns, part);
                for (int y = 0; y < part.Rows; y++)
                    Assert.Equal(whole.AsSpan((161 * 183) + ((top + y) * 183) + left, part.Columns).ToArray(), part.Row(1, y).ToArray());
            }
        }
    }

    [Theory]
    [InlineData((ushort)0)]
    [InlineData((ushort)65535)]
    [InlineData((ushort)32768)]
    [InlineData((ushort)6543)]
    public void Flat_stays_flat_but_for_its_last_bit(ushort value)
    {
        foreach (ScaleKernel kernel in Enum.GetValues<ScaleKernel>())
        {
            foreach (int to in new[] { 133, 11 })
            {
                ushort[] made = Scaled(new Picture(1, 37, 37, (_, _, _) => value), new(37, to, kernel), new(37, to, kernel), LanesHere.Best);
                Assert.Equal(made[0], made.Min());
                Assert.Equal(made[0], made.Max());
                Assert.InRange(made[0] - value, -1, 1);
            }
        }
    }

    [Fact]
    public void A_picture_of_the_same_size_is_copied_to_the_last_bit()
    {
        Picture picture = Picture.Noise(1, 30, 30, 14);
        ushort[] made = Scaled(picture, new(30, 30, ScaleKernel.Lanczos3), new(30, 30, ScaleKernel.CatmullRom), LanesHere.Best);
        Assert.Equal(picture.Through(new Laydown.Raster.Separation.PickInks([0])), made);
    }

    [Theory, MemberData(nameof(Ways))]
    public void A_mirrored_picture_comes_out_mirrored(int from, int to, ScaleKernel kernel)
    {
        // Pixels' middles are kept. A half of a pixel belongs to the left in the box kernel alone; the rest of a rounded sum goes to the first of two equal weights.
        if (kernel == ScaleKernel.Box)
            return;
        Picture picture = Picture.Noise(1, 3, from, 15), mirrored = new(1, 3, from, (ink, row, x) => picture[ink, row, from - 1 - x]);
        AxisScale rows = new(3, 4, kernel), columns = new(from, to, kernel);
        ushort[] one = Scaled(picture, rows, columns, LanesHere.Best), other = Scaled(mirrored, rows, columns, LanesHere.Best);
        for (int i = 0; i < one.Length; i++)
            Assert.InRange(one[i] - other[(i / to * to) + to - 1 - (i % to)], -40, 40);
    }

    [Fact]
    public void A_straight_rise_stays_straight_inside()
    {
        // A kernel that keeps straight lines has no error on them but for rounding: Catmull–Rom and linear do; windowed sines do not.
        foreach (ScaleKernel kernel in new[] { ScaleKernel.Linear, ScaleKernel.CatmullRom })
        {
            ushort[] made = Scaled(new Picture(1, 4, 100, (_, _, x) => (ushort)(x * 600)), new(4, 4, kernel), new(100, 360, kernel), LanesHere.Best);
            for (int x = 12; x < 348; x++)
                Assert.InRange(made[x] - (600 * (((x + 0.5) / 3.6) - 0.5)), -6, 6);
        }
    }

    private static ushort[] Scaled(Picture picture, AxisScale rows, AxisScale columns, Lanes lanes)
    {
        Tile target = new(picture.Inks, rows.TargetPixels, columns.TargetPixels);
        Run(new Scaler(rows, columns, lanes), picture, rows, columns, target);
        return [.. Enumerable.Range(0, target.Inks).SelectMany(ink => Enumerable.Range(0, target.Rows).SelectMany(row => target.Row(ink, row).ToArray()))];
    }

    private static void Run(Scaler scaler, Picture picture, AxisScale rows, AxisScale columns, Tile target)
    {
        (int row, int high) = rows.SourceRange(target.FirstRow, target.Rows);
        (int column, int wide) = columns.SourceRange(target.FirstColumn, target.Columns);
        Tile source = new(picture.Inks, high, wide);
        source.PlaceAt(row, column);
        SourceTile.Fill(picture, source);
        scaler.Run(source, target);
    }

    // The same sum in double, weights not rounded; edge pixels go on.
    private static double Exact(Picture picture, int y, int x, int to, ScaleKernel kernel)
    {
        (int First, double[] Weights) Side(int target, int from)
        {
            double per = from / (double)to, width = Math.Max(1, per), middle = ((target + 0.5) * per) - 0.5;
            int reach = (int)Math.Ceiling(3 * width) + 1, first = (int)Math.Floor(middle) - reach;
            double[] weights = [.. Enumerable.Range(0, (2 * reach) + 2).Select(i => KernelShape.At(kernel, (first + i - middle) / width))];
            return (first, [.. weights.Select(w => w / weights.Sum())]);
        }

        (int top, double[] down) = Side(y, picture.Rows);
        (int left, double[] across) = Side(x, picture.Columns);
        double sum = 0;
        for (int i = 0; i < down.Length; i++)
        {
            for (int j = 0; j < across.Length && down[i] != 0; j++)
                sum += down[i] * across[j] * picture[0, Math.Clamp(top + i, 0, picture.Rows - 1), Math.Clamp(left + j, 0, picture.Columns - 1)];
        }

        return Math.Clamp(sum, 0, 65535);
    }
}
