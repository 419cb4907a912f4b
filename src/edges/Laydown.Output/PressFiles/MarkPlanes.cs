using Laydown.Press.Inks;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;

namespace Laydown.Output.PressFiles;

/// <summary>A mark as planes of a layer: full laydown in black where the layer prints black, else in all of its inks; its ground is bare.</summary>
/// <param name="pixels">The mark, 0 bare, 255 full, row by row.</param>
/// <param name="rows">Rows.</param>
/// <param name="columns">Columns.</param>
/// <param name="planes">Planes of the layer.</param>
internal sealed class MarkPlanes(byte[] pixels, int rows, int columns, IReadOnlyList<InkPlane> planes) : IPlanes, ITileSource
{
    private readonly bool[] prints = PrintsIn(planes);

    /// <inheritdoc cref="IPlanes.Inks"/>
    public int Inks => planes.Count;

    /// <inheritdoc cref="IPlanes.Rows"/>
    public int Rows => rows;

    /// <inheritdoc cref="IPlanes.Columns"/>
    public int Columns => columns;

    /// <inheritdoc/>
    public void ReadRow(int ink, int row, int firstColumn, Span<byte> into)
    {
        if (prints[ink])
            pixels.AsSpan((row * columns) + firstColumn, into.Length).CopyTo(into);
        else
            into.Clear();
    }

    /// <inheritdoc/>
    public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
    {
        into.Clear();
        for (int x = 0; prints[ink] && x < into.Length; x++)
            into[x] = EightBits.Widened(pixels[(row * columns) + firstColumn + x]);
    }

    private static bool[] PrintsIn(IReadOnlyList<InkPlane> planes)
    {
        bool[] black = [.. planes.Select(p => p.Role == InkRole.Black)];
        return black.Contains(true) ? black : [.. planes.Select(_ => true)];
    }
}
