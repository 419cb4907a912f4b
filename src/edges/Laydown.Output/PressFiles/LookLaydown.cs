using System.Buffers;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;
using Laydown.Shop.Layers;

namespace Laydown.Output.PressFiles;

/// <summary>Laydown of one layer of a look as a picture: 8 bits widened to 16. Read from several threads.</summary>
/// <param name="planes">All planes of the look; they stay the caller's.</param>
/// <param name="first">First plane of the layer.</param>
/// <param name="inks">Planes of the layer.</param>
internal sealed class LookLaydown(LookPlanes planes, int first, int inks) : ITileSource
{
    public int Inks => inks;

    public int Rows => planes.Height;

    public int Columns => planes.Width;

    public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
    {
        byte[] line = ArrayPool<byte>.Shared.Rent(into.Length);
        Span<byte> bytes = line.AsSpan(0, into.Length);
        planes.ReadRow(first + ink, row, firstColumn, bytes);
        for (int x = 0; x < bytes.Length; x++)
            into[x] = EightBits.Widened(bytes[x]);
        ArrayPool<byte>.Shared.Return(line);
    }
}
