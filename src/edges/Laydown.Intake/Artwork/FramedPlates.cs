using System.Buffers;
using Laydown.Raster.Tiles;

namespace Laydown.Intake.Artwork;

/// <summary>A picture with mirrored margins around the part that the file fills.</summary>
/// <param name="filled">The filled part.</param>
/// <param name="frame">Where it lies.</param>
internal sealed class FramedPlates(ITileSource filled, PixelFrame frame) : ITileSource
{
    /// <inheritdoc/>
    public int Inks => filled.Inks;

    /// <inheritdoc/>
    public int Rows => frame.Height;

    /// <inheritdoc/>
    public int Columns => frame.Width;

    /// <inheritdoc/>
    public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
    {
        int from = PixelFrame.Mirrored(row, frame.Top, frame.Bottom);
        if (firstColumn >= frame.Left && firstColumn + into.Length <= frame.Right)
        {
            filled.ReadRow(ink, from, firstColumn - frame.Left, into);
            return;
        }

        // Only the columns that are shown are read, once each.
        int least = int.MaxValue, most = 0;
        for (int x = 0; x < into.Length; x++)
        {
            int at = PixelFrame.Mirrored(firstColumn + x, frame.Left, frame.Right);
            (least, most) = (Math.Min(least, at), Math.Max(most, at));
        }

        ushort[] line = ArrayPool<ushort>.Shared.Rent(most - least + 1);
        filled.ReadRow(ink, from, least, line.AsSpan(0, most - least + 1));
        for (int x = 0; x < into.Length; x++)
            into[x] = line[PixelFrame.Mirrored(firstColumn + x, frame.Left, frame.Right) - least];
        ArrayPool<ushort>.Shared.Return(line);
    }
}
