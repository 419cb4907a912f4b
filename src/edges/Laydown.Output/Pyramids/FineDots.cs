using Laydown.Formats.TiffWriting;
using Laydown.Measures;
using Laydown.Shop.Run;

namespace Laydown.Output.Pyramids;

/// <summary>Dots of a dot file, one by one or in means finer than its pyramid.</summary>
internal static class FineDots
{
    /// <summary>Code of each dot.</summary>
    public static Reading<byte[]> Codes(PressFileAt file, PressPart part) => DotTiffReader.Open(file.Path).Then(reader =>
    {
        using (reader)
        {
            byte[] codes = new byte[part.Rows * part.Columns], line = new byte[reader.BytesFor(part.Columns)];
            for (int y = 0; y < part.Rows; y++)
            {
                reader.ReadRow(part.Top + y, part.Left, part.Columns, line);
                Unpack(line, reader.BitsPerDot, codes.AsSpan(y * part.Columns, part.Columns));
            }

            return Reading.Of(codes);
        }
    });

    /// <summary>Mean coverage at a level, counted from the dots themselves.</summary>
    public static Reading<byte[]> Means(PressFileAt file, PressPart part, CancellationToken cancellation) => DotTiffReader.Open(file.Path).Then(reader =>
    {
        using (reader)
        {
            LevelShape shape = new(reader.Columns, reader.Rows);
            uint[] weights = DotBase.Weights(file.DropShares);
            int level = part.Level, left = part.Left << level, across = Math.Min(part.Columns << level, reader.Columns - left);
            byte[] means = new byte[part.Rows * part.Columns], packed = new byte[reader.BytesFor(across)], dots = new byte[across];
            ulong[] sums = new ulong[part.Columns];
            for (int y = 0; y < part.Rows; y++)
            {
                cancellation.ThrowIfCancellationRequested();
                sums.AsSpan().Clear();
                int top = (part.Top + y) << level, down = shape.DownAt(level, part.Top + y);
                for (int row = top; row < top + down; row++)
                {
                    reader.ReadRow(row, left, across, packed);
                    Unpack(packed, reader.BitsPerDot, dots);
                    for (int x = 0; x < across; x++)
                        sums[x >> level] += weights[dots[x]];
                }

                for (int x = 0; x < part.Columns; x++)
                {
                    ulong whole = (ulong)down * (ulong)shape.AcrossAt(level, part.Left + x) * DotBase.PartsPerCode;
                    means[(y * part.Columns) + x] = (byte)((sums[x] + (whole >> 1)) / whole);
                }
            }

            return Reading.Of(means);
        }
    });

    /// <summary>Packed dots to one byte each.</summary>
    public static void Unpack(ReadOnlySpan<byte> packed, int bits, Span<byte> codes)
    {
        int mask = (1 << bits) - 1;
        for (int x = 0; x < codes.Length; x++)
            codes[x] = (byte)((packed[(x * bits) >> 3] >> (8 - bits - ((x * bits) & 7))) & mask);
    }
}
