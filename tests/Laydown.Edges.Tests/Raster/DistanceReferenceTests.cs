using System.Globalization;
using System.Runtime.InteropServices;
using Laydown.Edges.Tests.Icc;
using Laydown.Edges.Tests.Orders;
using Laydown.Raster.Masks;
using Laydown.Raster.Tiles;
using SkiaSharp;

namespace Laydown.Edges.Tests.Raster;

/// <summary>
/// Choke, spread, feather and least feature against the exact Euclidean distances of SciPy (distance_transform_edt). Its distances are roots of whole
/// numbers; squared and rounded they are those numbers again, so every comparison is exact.
/// </summary>
public sealed class DistanceReferenceTests : IDisposable
{
    private const string Script = """
        import sys, numpy, scipy.ndimage
        folder, height, width, names = sys.argv[1], float(sys.argv[2]), float(sys.argv[3]), sys.argv[4:]
        for name in names:
            rows, columns = map(int, name.split('-')[1:3])
            mask = numpy.fromfile(folder + '/' + name, numpy.uint8).reshape(rows, columns)
            distance = scipy.ndimage.distance_transform_edt(mask, sampling=(height, width))
            numpy.rint(distance * distance).astype('<i8').tofile(folder + '/' + name + '.squares')
        """;

    private static readonly double[] Radii = [1, 1.5, 2, 2.9, 3.7, 5, 8, 8.5, 13.45, 16, 30, 31.9, 62, 63, 85, 127, 127.5, 200.2, 254.99, 255, 300];

    private readonly string folder = Directory.CreateTempSubdirectory("laydown-distance-").FullName;

    public static TheoryData<int, int> Shapes => new() { { 720, 720 }, { 720, 1080 }, { 1200, 600 } };

    [Theory, MemberData(nameof(Shapes))]
    public void Not_one_pixel_of_choke_and_spread_differs(int acrossDpi, int alongDpi)
    {
        PixelShape shape = new(acrossDpi, alongDpi);
        foreach ((Mask mask, long[] toBare, long[] toFull) in Measured(shape))
        {
            foreach (double radius in RadiiFor(shape))
            {
                double square = radius * shape.Width * radius * shape.Width;
                Assert.Equal(0, Differing(mask, new Choke(radius, shape), i => toBare[i] > square ? Tile.Full : (ushort)0));
                Assert.Equal(0, Differing(mask, new Choke(-radius, shape), i => toFull[i] > square ? (ushort)0 : Tile.Full));
            }
        }
    }

    [Theory, MemberData(nameof(Shapes))]
    public void Not_one_pixel_of_a_feather_differs_from_the_ramp_of_its_distance(int acrossDpi, int alongDpi)
    {
        PixelShape shape = new(acrossDpi, alongDpi);
        foreach ((Mask mask, long[] toBare, long[] toFull) in Measured(shape))
        {
            foreach (double width in RadiiFor(shape))
            {
                Assert.Equal(0, Differing(mask, new Feather(width, true, shape), i => Ramp(toBare[i])));
                Assert.Equal(0, Differing(mask, new Feather(width, false, shape), i => (ushort)(Tile.Full - Ramp(toFull[i]))));

                ushort Ramp(long square) =>
                    (ushort)Math.Floor((Math.Clamp(((Math.Sqrt(square) / shape.Width) - 0.5) / width, 0, 1) * Tile.Full) + 0.5);
            }
        }
    }

    [Theory]
    [InlineData(2.5)]
    [InlineData(5)]
    [InlineData(8.5)]
    [InlineData(12)]
    [InlineData(31)]
    public void Not_one_pixel_of_a_least_feature_differs_from_two_distances(double width)
    {
        // Ink stays where it is less than half the width from a pixel that is at least half the width from all that is bare.
        // Such a pixel may lie outside the picture, which goes on with its edge pixels.
        const int Margin = 40;
        Mask[] masks = [.. Masks()];
        Mask[] extended = [.. masks.Select(m => m.Extended(Margin))];
        long[][] toBare = Squares(extended, PixelShape.Square);
        double square = width * width / 4;
        Mask[] hearts = [.. extended.Select((m, n) => m with { Full = [.. toBare[n].Select(s => s < square)] })];
        long[][] toHeart = Squares(hearts, PixelShape.Square);
        for (int n = 0; n < masks.Length; n++)
        {
            // A mask without any heart has no distances; then nothing stays.
            bool any = hearts[n].Full.Contains(false);
            Mask mask = masks[n];
            Assert.Equal(0, Differing(mask, new MinFeature(width), i => any && toHeart[n][Outer(i)] < square ? Tile.Full : (ushort)0));

            int Outer(int i) => (((i / mask.Columns) + Margin) * (mask.Columns + (2 * Margin))) + (i % mask.Columns) + Margin;
        }

        Assert.Contains(hearts, h => h.Full.Contains(false));
        Assert.InRange(masks[^1].Full.Count(f => f), 5000, 30000);
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    // All of them with square pixels, each third with others.
    private static IEnumerable<double> RadiiFor(PixelShape shape) => shape == PixelShape.Square ? Radii : Radii.Where((_, n) => n % 3 == 1);

    private IEnumerable<(Mask Mask, long[] ToBare, long[] ToFull)> Measured(PixelShape shape)
    {
        Mask[] masks = [.. Masks()];
        long[][] toBare = Squares(masks, shape);
        long[][] toFull = Squares([.. masks.Select(m => m with { Full = [.. m.Full.Select(f => !f)] })], shape);
        return masks.Select((m, n) => (m, toBare[n], toFull[n]));
    }

    private long[][] Squares(Mask[] masks, PixelShape shape)
    {
        string[] names = [.. masks.Select((m, n) => Invariant($"m{n}-{m.Rows}-{m.Columns}"))];
        for (int n = 0; n < masks.Length; n++)
            File.WriteAllBytes(Path.Combine(folder, names[n]), [.. masks[n].Full.Select(f => f ? (byte)1 : (byte)0)]);
        OutsideProgram.Run("/usr/bin/python3", "", ["-c", Script, folder, Text(shape.Height), Text(shape.Width), .. names]);
        return [.. names.Select(n => MemoryMarshal.Cast<byte, long>(File.ReadAllBytes(Path.Combine(folder, n + ".squares"))).ToArray())];
    }

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);

    // Grains, discs and strokes like letters; none is all bare or all full.
    private static IEnumerable<Mask> Masks()
    {
        Random chance = new(5);
        yield return Mask.Of(150, 210, (_, _) => chance.Next(400) != 0);
        yield return Mask.Of(150, 210, (_, _) => chance.Next(3) == 0);
        (int X, int Y, int R)[] discs = [.. Enumerable.Range(0, 30).Select(i => (chance.Next(400), chance.Next(330), 4 + (i * 2)))];
        yield return Mask.Of(330, 400, (y, x) => !discs.Any(d => ((x - d.X) * (x - d.X)) + ((y - d.Y) * (y - d.Y)) < d.R * d.R / 2));
        yield return Mask.Of(340, 170, (y, x) => Letter(y % 85, x % 85, y / 85));
        yield return Written();
    }

    // Letters of a real typeface, large and small.
    private static Mask Written()
    {
        using SKBitmap paper = new(260, 200, SKColorType.Gray8, SKAlphaType.Opaque);
        using SKCanvas canvas = new(paper);
        using SKTypeface face = SKTypeface.FromFile(Path.Combine(Checkout.Root, "assets", "fonts", "Lato-Black.ttf"));
        using SKFont large = new(face, 130), small = new(face, 26);
        using SKPaint black = new() { Color = SKColors.Black };
        canvas.Clear(SKColors.White);
        canvas.DrawText("Rg8&", 2, 110, SKTextAlign.Left, large, black);
        canvas.DrawText("quay, ebb & flow", 10, 175, SKTextAlign.Left, small, black);
        canvas.Flush();
        return Mask.Of(paper.Height, paper.Width, (y, x) => paper.GetPixel(x, y).Red < 128);
    }

    // Stems, bars, slants and bowls from 1 to 16 pixels wide.
    private static bool Letter(int y, int x, int size)
    {
        int stem = 1 << (size + 1);
        bool slant = Math.Abs(x - 20 - (y / 3)) < stem / 2.0;
        bool bar = y is > 40 and < 80 && Math.Abs(y - 45) < stem / 2.0 && x > 8 && x < 76;
        double bowl = Math.Sqrt(((x - 55) * (x - 55)) + ((y - 38) * (y - 38)));
        return (y is > 6 and < 78 && slant) || bar || Math.Abs(bowl - 22) < stem / 2.0 || (x > 76 && x <= 76 + size);
    }

    private static int Differing(Mask mask, ITileStage stage, Func<int, ushort> expected)
    {
        int differing = 0;
        new StageChain([stage]).Run(mask, 64, 128, new Compared((i, value) => differing += value == expected(i) ? 0 : 1, mask.Columns), CancellationToken.None);
        return differing;
    }

    private sealed record Mask(int Rows, int Columns, bool[] Full) : ITileSource
    {
        public int Inks => 1;

        public static Mask Of(int rows, int columns, Func<int, int, bool> full) =>
            new(rows, columns, [.. Enumerable.Range(0, rows * columns).Select(i => full(i / columns, i % columns))]);

        public Mask Extended(int margin) => Of(Rows + (2 * margin), Columns + (2 * margin), (y, x) =>
            Full[(Math.Clamp(y - margin, 0, Rows - 1) * Columns) + Math.Clamp(x - margin, 0, Columns - 1)]);

        public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
        {
            for (int x = 0; x < into.Length; x++)
                into[x] = Full[(row * Columns) + firstColumn + x] ? Tile.Full : (ushort)0;
        }
    }

    private sealed class Compared(Action<int, ushort> each, int columns) : ITileSink
    {
        public void Take(int firstRow, int firstColumn, Tile tile)
        {
            for (int row = 0; row < tile.Rows; row++)
            {
                for (int x = 0; x < tile.Columns; x++)
                    each(((firstRow + row) * columns) + firstColumn + x, tile.Row(0, row)[x]);
            }
        }
    }
}
