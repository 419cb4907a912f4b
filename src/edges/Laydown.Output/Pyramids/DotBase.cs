using System.Runtime.InteropServices;
using Laydown.Formats.TiffWriting;
using Laydown.Measures;
using Laydown.Shop.Run;

namespace Laydown.Output.Pyramids;

/// <summary>Sums over 8 × 8 dots of a dot file, counted eight bytes at a time.</summary>
internal sealed class DotBase : IBaseLevel
{
    /// <summary>Parts of a code of 255 that a dot's share of a full laydown is rounded to.</summary>
    public const uint PartsPerCode = 256;

    private const ulong Ones = 0x5555555555555555;

    private readonly DotTiffReader reader;
    private readonly uint[] weights;
    private readonly ulong[] words;
    private readonly ulong[][] counts;

    private DotBase(DotTiffReader reader, IReadOnlyList<double> shares)
    {
        this.reader = reader;
        weights = Weights(shares);
        words = new ulong[(reader.BytesFor(reader.Columns) + 7) / 8];
        counts = [.. Enumerable.Range(0, 3).Select(_ => new ulong[words.Length])];
        Shape = ShapeOf(reader);
    }

    public PressFileShape Shape { get; }

    public int Level => 3;

    public uint Unit => PartsPerCode;

    /// <summary>Opens the file.</summary>
    /// <param name="path">Where it lies.</param>
    /// <param name="shares">Share of a full laydown of each code, bare first.</param>
    public static Reading<IBaseLevel> Open(string path, IReadOnlyList<double> shares) =>
        DotTiffReader.Open(path).Then(reader => Reading.Of<IBaseLevel>(new DotBase(reader, shares)));

    /// <summary>What a dot file holds.</summary>
    public static PressFileShape ShapeOf(DotTiffReader reader) =>
        new(reader.Columns, reader.Rows, 1, reader.BitsPerDot, reader.ScanDpi, reader.FeedDpi, [reader.InkName]);

    /// <summary>Weight of each of four codes in parts of a code of 255; codes without a drop weigh as much as the largest.</summary>
    public static uint[] Weights(IReadOnlyList<double> shares) =>
        [.. Enumerable.Range(0, 4).Select(code => (uint)Math.Round(255 * PartsPerCode * (code < shares.Count ? shares[code] : shares[^1])))];

    public void Sum(int row, ulong[] sums)
    {
        foreach (ulong[] count in counts)
            count.AsSpan().Clear();
        Span<byte> line = MemoryMarshal.AsBytes(words.AsSpan())[..reader.BytesFor(reader.Columns)];
        int first = 8 * row, end = Math.Min(reader.Rows, first + 8);
        for (int at = first; at < end; at++)
        {
            reader.ReadRow(at, 0, reader.Columns, line);
            if (reader.BitsPerDot == 1)
                CountBits();
            else
                CountCodes();
        }

        Weigh(sums);
    }

    public void Dispose() => reader.Dispose();

    // Of every byte how many bits are set, eight bytes side by side; eight rows of eight dots stay within a byte.
    private void CountBits()
    {
        ulong[] one = counts[0];
        for (int i = 0; i < words.Length; i++)
            one[i] += PerByte(words[i]);
    }

    private void CountCodes()
    {
        (ulong[] one, ulong[] two, ulong[] three) = (counts[0], counts[1], counts[2]);
        for (int i = 0; i < words.Length; i++)
        {
            ulong low = words[i] & Ones, high = (words[i] >> 1) & Ones, both = low & high;
            one[i] += PerByte(low ^ both);
            two[i] += PerByte(high ^ both);
            three[i] += PerByte(both);
        }
    }

    private static ulong PerByte(ulong bits)
    {
        bits -= (bits >> 1) & Ones;
        bits = (bits & 0x3333333333333333) + ((bits >> 2) & 0x3333333333333333);
        return (bits + (bits >> 4)) & 0x0F0F0F0F0F0F0F0F;
    }

    private void Weigh(ulong[] sums)
    {
        ReadOnlySpan<byte> one = MemoryMarshal.AsBytes(counts[0].AsSpan()), two = MemoryMarshal.AsBytes(counts[1].AsSpan()), three = MemoryMarshal.AsBytes(counts[2].AsSpan());
        if (reader.BitsPerDot == 1)
        {
            for (int x = 0; x < sums.Length; x++)
                sums[x] = (ulong)one[x] * weights[1];
            return;
        }

        // Eight dots of two bits take two bytes; the last may be missing.
        for (int x = 0; x < sums.Length; x++)
        {
            int left = 2 * x, right = Math.Min(left + 1, one.Length - 1);
            uint Both(ReadOnlySpan<byte> count) => (uint)count[left] + (right > left ? count[right] : 0u);
            sums[x] = ((ulong)Both(one) * weights[1]) + ((ulong)Both(two) * weights[2]) + ((ulong)Both(three) * weights[3]);
        }
    }
}
