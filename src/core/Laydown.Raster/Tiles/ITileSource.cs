namespace Laydown.Raster.Tiles;

/// <summary>A picture that can be read tile by tile.</summary>
public interface ITileSource
{
    /// <summary>How many planes.</summary>
    int Inks { get; }

    /// <summary>Pixels down.</summary>
    int Rows { get; }

    /// <summary>Pixels across.</summary>
    int Columns { get; }

    /// <summary>Part of one row of one plane, within the picture.</summary>
    /// <param name="ink">Plane from 0.</param>
    /// <param name="row">Row from 0, from the top.</param>
    /// <param name="firstColumn">First column.</param>
    /// <param name="into">Takes as many values as it is long.</param>
    void ReadRow(int ink, int row, int firstColumn, Span<ushort> into);
}
