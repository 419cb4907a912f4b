using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Sheets;

/// <summary>Turns a tile on its side: columns become rows.</summary>
internal static class SideTurn
{
    private const int Block = 8;

    /// <summary>Writes the plane of one ink turned.</summary>
    /// <param name="seen">The upright part.</param>
    /// <param name="ink">Which ink.</param>
    /// <param name="columnsUp">Whether the last column becomes the first row.</param>
    /// <param name="rowsBack">Whether the last row becomes the first column.</param>
    /// <param name="sheet">Takes it.</param>
    /// <param name="row">Row of the sheet's tile where the first goes.</param>
    /// <param name="column">Column of the sheet's tile where the first goes.</param>
    /// <param name="lanes">How wide to work: plain, or eight by eight.</param>
    public static void Run(Tile seen, int ink, bool columnsUp, bool rowsBack, Tile sheet, int row, int column, Lanes lanes)
    {
        // Whole blocks of eight by eight through registers, the rest one by one.
        bool blocks = lanes != Lanes.Plain && Sse2.IsSupported;
        int rows = blocks ? seen.Rows - (seen.Rows % Block) : 0, columns = blocks ? seen.Columns - (seen.Columns % Block) : 0;
        for (int v = 0; v < rows; v += Block)
        {
            for (int u = 0; u < columns; u += Block)
                TurnBlock(seen, ink, u, v, columnsUp, rowsBack, sheet, row, column);
        }

        for (int v = 0; v < seen.Rows; v++)
        {
            ReadOnlySpan<ushort> from = seen.Row(ink, v);
            int x = column + (rowsBack ? seen.Rows - 1 - v : v);
            for (int u = v < rows ? columns : 0; u < from.Length; u++)
                sheet.Row(ink, row + (columnsUp ? from.Length - 1 - u : u))[x] = from[u];
        }
    }

    /// <summary>The same at the widest this processor has.</summary>
    public static void Run(Tile seen, int ink, bool columnsUp, bool rowsBack, Tile sheet, int row, int column) =>
        Run(seen, ink, columnsUp, rowsBack, sheet, row, column, LanesHere.Best);

    private static void TurnBlock(Tile seen, int ink, int u, int v, bool columnsUp, bool rowsBack, Tile sheet, int row, int column)
    {
        Span<Vector128<ushort>> lines = stackalloc Vector128<ushort>[Block];
        for (int i = 0; i < Block; i++)
            lines[i] = Vector128.Create(seen.Row(ink, v + (rowsBack ? Block - 1 - i : i)).Slice(u, Block));
        Transpose(lines);
        int x = column + (rowsBack ? seen.Rows - Block - v : v);
        for (int i = 0; i < Block; i++)
        {
            int y = row + (columnsUp ? seen.Columns - 1 - u - i : u + i);
            lines[i].CopyTo(sheet.Row(ink, y).Slice(x, Block));
        }
    }

    // Three rounds of interleaving halves: pairs, quads, rows.
    private static void Transpose(Span<Vector128<ushort>> a)
    {
        Span<Vector128<ushort>> b = stackalloc Vector128<ushort>[Block];
        for (int i = 0; i < 4; i++)
            (b[2 * i], b[(2 * i) + 1]) = (Sse2.UnpackLow(a[i], a[i + 4]), Sse2.UnpackHigh(a[i], a[i + 4]));
        for (int i = 0; i < 4; i++)
            (a[2 * i], a[(2 * i) + 1]) = (Sse2.UnpackLow(b[i], b[i + 4]), Sse2.UnpackHigh(b[i], b[i + 4]));
        for (int i = 0; i < 4; i++)
            (b[2 * i], b[(2 * i) + 1]) = (Sse2.UnpackLow(a[i], a[i + 4]), Sse2.UnpackHigh(a[i], a[i + 4]));
        b.CopyTo(a);
    }
}
