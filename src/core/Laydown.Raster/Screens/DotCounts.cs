using System.Buffers.Binary;
using System.Numerics;

namespace Laydown.Raster.Screens;

/// <summary>Counts dots in packed rows.</summary>
public static class DotCounts
{
    /// <summary>Adds the dots of a range of columns, code by code.</summary>
    /// <param name="packedRow">A row of <see cref="DotRows"/>.</param>
    /// <param name="bitsPerDot">1 or 2.</param>
    /// <param name="firstColumn">First column, from 0.</param>
    /// <param name="columns">How many; 0 adds nothing.</param>
    /// <param name="countsPerLevel">One place for each code that occurs: 2, or up to 4. Bare dots are counted at 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The range reaches beyond the row.</exception>
    public static void Add(ReadOnlySpan<byte> packedRow, int bitsPerDot, int firstColumn, int columns, Span<long> countsPerLevel)
    {
        if (columns <= 0)
            return;

        // Whole bytes first; the bits of the two outer bytes that lie outside the range are masked away, so they count as bare.
        int firstBit = firstColumn * bitsPerDot, endBit = (firstColumn + columns) * bitsPerDot;
        ReadOnlySpan<byte> bytes = packedRow[(firstBit >> 3)..((endBit + 7) >> 3)];
        byte first = (byte)(0xFF >> (firstBit & 7));
        byte last = (byte)(0xFF << (-endBit & 7));
        Sums sums = default;
        if (bytes.Length == 1)
        {
            sums.Take((uint)(bytes[0] & first & last));
        }
        else
        {
            sums.Take((uint)(bytes[0] & first) | ((uint)(bytes[^1] & last) << 8));
            sums.TakeAll(bytes[1..^1], bitsPerDot);
        }

        sums.AddTo(countsPerLevel, bitsPerDot, columns);
    }

    private struct Sums
    {
        private long all;
        private long high;
        private long both;

        // All set bits; of dots with 2 bits also the high ones, and those where both are set.
        public void Take(ulong word)
        {
            ulong upper = (word >> 1) & 0x5555555555555555;
            all += BitOperations.PopCount(word);
            high += BitOperations.PopCount(upper);
            both += BitOperations.PopCount(upper & word);
        }

        public void TakeAll(ReadOnlySpan<byte> bytes, int bitsPerDot)
        {
            while (bytes.Length >= 8)
            {
                ulong word = BinaryPrimitives.ReadUInt64LittleEndian(bytes);
                if (bitsPerDot == 1)
                    all += BitOperations.PopCount(word);
                else
                    Take(word);
                bytes = bytes[8..];
            }

            foreach (byte rest in bytes)
                Take(rest);
        }

        public readonly void AddTo(Span<long> counts, int bitsPerDot, int columns)
        {
            if (bitsPerDot == 1)
            {
                counts[1] += all;
                counts[0] += columns - all;
                return;
            }

            long low = all - high;
            counts[1] += low - both;
            counts[2] += high - both;
            if (counts.Length > 3)
                counts[3] += both;
            counts[0] += columns - (low + high - both);
        }
    }
}
