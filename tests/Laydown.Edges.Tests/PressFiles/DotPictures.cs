using Laydown.Formats.TiffWriting;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Dots for tests: speckle, bare bands and full bands, so that packing meets runs and none.</summary>
internal static class DotPictures
{
    public static DotHeader Header(int columns, int rows, int bits, DotPacking packing, int rowsPerStrip = 16) =>
        new(columns, rows, bits, 720, 360, rowsPerStrip, packing, "Light Cyan", "Invented, sheet 1 of 1");

    /// <summary>The code of a dot.</summary>
    public static int Code(int row, int column, int bits) => (row / 12 % 4) switch
    {
        0 => 0,
        1 => (1 << bits) - 1,
        2 => column / 20 % 2 == 0 ? 0 : Painter.Noise("d", "", column, row) & ((1 << bits) - 1),
        _ => Painter.Noise("d", "", column, row) & ((1 << bits) - 1),
    };

    /// <summary>Rows of a strip, packed from the high bit down.</summary>
    public static byte[] Strip(DotHeader header, int strip)
    {
        byte[] bytes = new byte[header.BytesOf(strip)];
        for (int row = 0; row < header.RowsOf(strip); row++)
        {
            for (int column = 0; column < header.Columns; column++)
            {
                int code = Code((strip * header.RowsPerStrip) + row, column, header.BitsPerDot);
                int bit = column * header.BitsPerDot;
                bytes[(row * header.RowBytes) + (bit >> 3)] |= (byte)(code << (8 - header.BitsPerDot - (bit & 7)));
            }
        }

        return bytes;
    }

    /// <summary>Writes the whole file, strips in the order given or from the top.</summary>
    public static void Write(string path, DotHeader header, IEnumerable<int>? order = null)
    {
        using DotTiffWriter writer = DotTiffWriter.Create(path, header);
        foreach (int strip in order ?? Enumerable.Range(0, header.Strips))
            writer.Write(strip, Strip(header, strip));
        writer.Finish();
    }
}
