using System.Buffers;
using Laydown.Raster.Tiles;

namespace Laydown.Intake.Artwork;

/// <summary>The filled part of a page whose plates Ghostscript is still writing, strip of rows after strip.</summary>
/// <param name="inks">Plates.</param>
/// <param name="frame">The page's pixels and the part that counts.</param>
/// <param name="stripRows">Rows of each strip but the last.</param>
/// <param name="strips">The strips, from the top; each is there when its first row has arrived.</param>
/// <param name="arrived">Rows of the filled part that are there.</param>
internal sealed class GrowingPlates(int inks, PixelFrame frame, int stripRows, IReadOnlyList<SeparationStrip> strips, ArrivedRows arrived) : ITileSource
{
    /// <inheritdoc/>
    public int Inks => inks;

    /// <inheritdoc/>
    public int Rows => frame.FilledHeight;

    /// <inheritdoc/>
    public int Columns => frame.FilledWidth;

    /// <inheritdoc/>
    public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
    {
        arrived.WaitFor(row);
        byte[] line = ArrayPool<byte>.Shared.Rent(into.Length);
        int at = frame.Top + row;
        strips[at / stripRows].Read(ink, at % stripRows, frame.Left + firstColumn, line.AsSpan(0, into.Length));
        PlateBytes.WidenInverted(line.AsSpan(0, into.Length), into);
        ArrayPool<byte>.Shared.Return(line);
    }
}
