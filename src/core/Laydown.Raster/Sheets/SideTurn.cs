using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
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
        for (int u = 0; u < columns; u += Block)
        {
            for (int v = 0; v < rows; v += Block)
                TurnBlock(seen, ink, u, v, columnsUp, rowsBack, sheet, row, column);
        }

        Span<ushort> to = sheet.Plane(ink);
        for (int v = 0; v < seen.Rows; v++)
        {
            ReadOnlySpan<ushort> from = seen.Row(ink, v);
            int x = column + (rowsBack ? seen.Rows - 1 - v : v);
            for (int u = v < rows ? columns : 0; u < from.Length; u++)
                to[((row + (columnsUp ? from.Length - 1 - u : u)) * sheet.Columns) + x] = from[u];
        }
    }

    /// <summary>The same at the widest this processor has.</summary>
    public static void Run(Tile seen, int ink, bool columnsUp, bool rowsBack, Tile sheet, int row, int column) =>
        Run(seen, ink, columnsUp, rowsBack, sheet, row, column, LanesHere.Best);

    // Whole blocks lie within both tiles, so their places need no further look.
    private static void TurnBlock(Tile seen, int ink, int u, int v, bool columnsUp, bool rowsBack, Tile sheet, int row, int column)
    {
        nint step = rowsBack ? -seen.Columns : seen.Columns, down = columnsUp ? -sheet.Columns : sheet.Columns;
        ref ushort from = ref Unsafe.Add(ref MemoryMarshal.GetReference(seen.Plane(ink)), ((v + (rowsBack ? Block - 1 : 0)) * seen.Columns) + u);
        int x = column + (rowsBack ? seen.Rows - Block - v : v), y = row + (columnsUp ? seen.Columns - 1 - u : u);
        ref ushort to = ref Unsafe.Add(ref MemoryMarshal.GetReference(sheet.Plane(ink)), (y * sheet.Columns) + x);
        Vector128<ushort> Line(ref ushort first, nint i) => Vector128.LoadUnsafe(ref Unsafe.Add(ref first, i * step));
        (Vector128<ushort> a0, Vector128<ushort> a1, Vector128<ushort> a2, Vector128<ushort> a3) = (Line(ref from, 0), Line(ref from, 1), Line(ref from, 2), Line(ref from, 3));
        (Vector128<ushort> a4, Vector128<ushort> a5, Vector128<ushort> a6, Vector128<ushort> a7) = (Line(ref from, 4), Line(ref from, 5), Line(ref from, 6), Line(ref from, 7));
        for (int round = 0; round < 3; round++)
        {
            // Interleaving halves three times turns the block.
            (Vector128<ushort> b0, Vector128<ushort> b1, Vector128<ushort> b2, Vector128<ushort> b3) =
                (Sse2.UnpackLow(a0, a4), Sse2.UnpackHigh(a0, a4), Sse2.UnpackLow(a1, a5), Sse2.UnpackHigh(a1, a5));
            (a4, a5, a6, a7) = (Sse2.UnpackLow(a2, a6), Sse2.UnpackHigh(a2, a6), Sse2.UnpackLow(a3, a7), Sse2.UnpackHigh(a3, a7));
            (a0, a1, a2, a3) = (b0, b1, b2, b3);
        }

        a0.StoreUnsafe(ref to);
        a1.StoreUnsafe(ref Unsafe.Add(ref to, down));
        a2.StoreUnsafe(ref Unsafe.Add(ref to, 2 * down));
        a3.StoreUnsafe(ref Unsafe.Add(ref to, 3 * down));
        a4.StoreUnsafe(ref Unsafe.Add(ref to, 4 * down));
        a5.StoreUnsafe(ref Unsafe.Add(ref to, 5 * down));
        a6.StoreUnsafe(ref Unsafe.Add(ref to, 6 * down));
        a7.StoreUnsafe(ref Unsafe.Add(ref to, 7 * down));
    }
}
