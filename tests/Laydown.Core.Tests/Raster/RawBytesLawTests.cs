using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster;

public sealed class RawBytesLawTests
{
    [Fact]
    public void Every_byte_is_widened_where_it_stands_for_every_length()
    {
        for (int length = 0; length < 100; length++)
        {
            byte[] bytes = [.. Enumerable.Range(0, length).Select(x => (byte)(Picture.Hash(7, length, 0, x) & 0xFF))];
            ushort[] row = new ushort[length];
            bytes.CopyTo(RawBytes.UpperHalf(row));
            RawBytes.Widen(row);
            Assert.Equal(bytes.Select(b => (ushort)(b * 257)), row);
        }
    }
}
