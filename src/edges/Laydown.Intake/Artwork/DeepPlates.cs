using System.Runtime.InteropServices;
using Laydown.Raster.Tiles;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Intake.Artwork;

/// <summary>A scratch file of plates, 16 bits a value, plate after plate, row after row, that is read while it is written.</summary>
/// <remarks>Read by position, not mapped: resident memory does not grow with the picture.</remarks>
internal sealed class DeepPlates : ITileSource, IDisposable
{
    private readonly SafeFileHandle handle;
    private readonly ArrivedRows arrived;

    /// <summary>Makes the file.</summary>
    /// <param name="path">A file that is not there yet.</param>
    /// <param name="inks">Plates.</param>
    /// <param name="rows">Pixels down.</param>
    /// <param name="columns">Pixels across.</param>
    /// <param name="arrived">Rows that are there; told by who writes.</param>
    public DeepPlates(string path, int inks, int rows, int columns, ArrivedRows arrived)
    {
        (Inks, Rows, Columns, this.arrived) = (inks, rows, columns, arrived);
        handle = File.OpenHandle(path, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.Read, FileOptions.None, 2L * inks * rows * columns);
    }

    /// <inheritdoc/>
    public int Inks { get; }

    /// <inheritdoc/>
    public int Rows { get; }

    /// <inheritdoc/>
    public int Columns { get; }

    /// <summary>Writes a row of one plate; it is read only after all plates of the row were told to have arrived.</summary>
    public void Write(int ink, int row, ReadOnlySpan<ushort> values) => Positional.Put(handle, MemoryMarshal.AsBytes(values), Place(ink, row, 0));

    /// <inheritdoc/>
    public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
    {
        arrived.WaitFor(row);
        Positional.Fill(handle, MemoryMarshal.AsBytes(into), Place(ink, row, firstColumn));
    }

    /// <inheritdoc/>
    public void Dispose() => handle.Dispose();

    private long Place(int ink, int row, int column) => 2 * ((((((long)ink * Rows) + row) * Columns)) + column);
}
