using System.Runtime.Intrinsics;
using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Sums;

/// <summary>Adds up the ink of a picture: mean laydown of each plane and the highest sum at one pixel.</summary>
/// <remarks>Whole numbers inside, so the order and size of tiles do not matter. From several threads at once.</remarks>
/// <param name="inks">How many planes.</param>
public sealed class InkSums(int inks) : ITileSink
{
    // Two values of 16 bits are added to each of eight sums of 32 bits for every 16 pixels.
    private const int MostAtOnce = 16 * 32768;

    private readonly Lock gate = new();
    private readonly ulong[] sums = new ulong[Bounds.Within(inks, 1, 64)];
    private long pixels;
    private uint maxTotal;

    /// <summary>Mean laydown of a plane, 0 to 1; 0 before any pixel came.</summary>
    public double Mean(int ink) => pixels == 0 ? 0 : sums[ink] / ((double)pixels * Tile.Full);

    /// <summary>Highest sum of all planes at one pixel, 1 = one full ink.</summary>
    public double MaxTotal => maxTotal / (double)Tile.Full;

    /// <inheritdoc/>
    public void Take(int firstRow, int firstColumn, Tile tile)
    {
        uint[] totals = new uint[tile.Columns];
        ulong[] own = new ulong[sums.Length];
        uint highest = 0;
        for (int row = 0; row < tile.Rows; row++)
        {
            Array.Clear(totals);
            for (int ink = 0; ink < sums.Length; ink++)
                own[ink] += Add(tile.Row(ink, row), totals);
            highest = Math.Max(highest, Highest(totals));
        }

        lock (gate)
        {
            for (int ink = 0; ink < sums.Length; ink++)
                sums[ink] += own[ink];
            maxTotal = Math.Max(maxTotal, highest);
            pixels += (long)tile.Rows * tile.Columns;
        }
    }

    private static ulong Add(ReadOnlySpan<ushort> line, Span<uint> totals)
    {
        ulong sum = 0;
        int x = 0;
        for (; x + MostAtOnce <= line.Length; x += MostAtOnce)
            sum += AddWide(line.Slice(x, MostAtOnce), totals[x..]);
        int whole = (line.Length - x) & -Vector256<ushort>.Count;
        sum += AddWide(line.Slice(x, whole), totals[x..]);
        for (x += whole; x < line.Length; x++)
        {
            sum += line[x];
            totals[x] += line[x];
        }

        return sum;
    }

    private static uint Highest(ReadOnlySpan<uint> totals)
    {
        uint highest = 0;
        foreach (uint total in totals)
            highest = Math.Max(highest, total);
        return highest;
    }

    private static ulong AddWide(ReadOnlySpan<ushort> line, Span<uint> totals)
    {
        Vector256<uint> sum = Vector256<uint>.Zero;
        for (int x = 0; x < line.Length; x += Vector256<ushort>.Count)
        {
            (Vector256<uint> low, Vector256<uint> high) = Vector256.Widen(Vector256.Create(line[x..]));
            sum += low + high;
            (Vector256.Create<uint>(totals[x..]) + low).CopyTo(totals[x..]);
            (Vector256.Create<uint>(totals[(x + Vector256<uint>.Count)..]) + high).CopyTo(totals[(x + Vector256<uint>.Count)..]);
        }

        (Vector256<ulong> even, Vector256<ulong> odd) = Vector256.Widen(sum);
        return Vector256.Sum(even + odd);
    }
}
