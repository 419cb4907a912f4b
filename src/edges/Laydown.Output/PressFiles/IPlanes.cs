namespace Laydown.Output.PressFiles;

/// <summary>Laydown of one layer of one item, 8 bits: on disk for press files, in memory for previews.</summary>
internal interface IPlanes
{
    /// <summary>How many inks.</summary>
    int Inks { get; }

    /// <summary>Pixels down.</summary>
    int Rows { get; }

    /// <summary>Pixels across.</summary>
    int Columns { get; }

    /// <summary>Part of one row of one ink.</summary>
    void ReadRow(int ink, int row, int firstColumn, Span<byte> into);
}
