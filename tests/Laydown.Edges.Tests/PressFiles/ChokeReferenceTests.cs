using Laydown.Raster.Masks;
using Laydown.Raster.Tiles;
using NetVips;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Choke against libvips: erosion by a disc (its operation morph).</summary>
public sealed class ChokeReferenceTests
{
    private const int Side = 160;

    [Theory]
    [InlineData(1.0)]
    [InlineData(3.0)]
    [InlineData(4.5)]
    [InlineData(9.2)]
    public void Equals_the_erosion_of_libvips_away_from_the_edge_of_the_picture(double radius)
    {
        byte[] mask = Blobs();
        int reach = (int)radius, width = (2 * reach) + 1;
        double[,] disc = new double[width, width];
        for (int y = 0; y < width; y++)
        {
            for (int x = 0; x < width; x++)
                disc[y, x] = ((x - reach) * (x - reach)) + ((y - reach) * (y - reach)) <= radius * radius ? 255 : 128;
        }

        using Image picture = Image.NewFromMemory(mask, Side, Side, 1, Enums.BandFormat.Uchar);
        using Image element = Image.NewFromArray(disc);
        using Image eroded = picture.Morph(element, Enums.OperationMorphology.Erode);
        byte[] expected = eroded.WriteToMemory<byte>();
        byte[] found = Choked(mask, radius);
        int compared = 0;
        for (int y = reach; y < Side - reach; y++)
        {
            for (int x = reach; x < Side - reach; x++, compared++)
                Assert.Equal(expected[(y * Side) + x], found[(y * Side) + x]);
        }

        Assert.True(compared > Side * Side / 2 && found.Distinct().Count() == 2);
    }

    private static byte[] Choked(byte[] mask, double radius)
    {
        Gathered all = new();
        new StageChain([new Choke(radius)]).Run(new Mask(mask), 32, Side, all, CancellationToken.None);
        return all.Values;
    }

    private static byte[] Blobs()
    {
        byte[] mask = new byte[Side * Side];
        Array.Fill(mask, (byte)255);
        for (int i = 0; i < 40; i++)
        {
            int cx = Painter.Noise("x", "x", i, 1) * Side / 256, cy = Painter.Noise("y", "y", i, 2) * Side / 256, r = Painter.Noise("r", "r", i, 3) / 28;
            for (int y = Math.Max(0, cy - r); y <= Math.Min(Side - 1, cy + r); y++)
            {
                for (int x = Math.Max(0, cx - r); x <= Math.Min(Side - 1, cx + r); x++)
                    mask[(y * Side) + x] = ((x - cx) * (x - cx)) + ((y - cy) * (y - cy)) <= r * r ? (byte)0 : mask[(y * Side) + x];
            }
        }

        return mask;
    }

    private sealed class Mask(byte[] values) : ITileSource
    {
        public int Inks => 1;

        public int Rows => Side;

        public int Columns => Side;

        public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
        {
            for (int x = 0; x < into.Length; x++)
                into[x] = (ushort)(values[(row * Side) + firstColumn + x] * 257);
        }
    }

    private sealed class Gathered : ITileSink
    {
        public byte[] Values { get; } = new byte[Side * Side];

        public void Take(int firstRow, int firstColumn, Tile tile)
        {
            for (int row = 0; row < tile.Rows; row++)
            {
                for (int x = 0; x < tile.Columns; x++)
                    Values[((firstRow + row) * Side) + firstColumn + x] = (byte)(tile.Row(0, row)[x] / 257);
            }
        }
    }
}
