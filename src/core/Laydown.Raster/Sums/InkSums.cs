using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Sums;

/// <summary>Adds up the ink of a picture: mean laydown of each plane and the highest sum at one pixel.</summary>
/// <remarks>Whole numbers inside, so the order and size of tiles do not matter. From several threads at once.</remarks>
/// <param name="inks">How many planes.</param>
public sealed class InkSums(int inks) : ITileSink
{
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
                Add(tile.Row(ink, row), totals, ref own[ink]);
            foreach (uint total in totals)
                highest = Math.Max(highest, total);
        }

        lock (gate)
        {
            for (int ink = 0; ink < sums.Length; ink++)
                sums[ink] += own[ink];
            maxTotal = Math.Max(maxTotal, highest);
            pixels += (long)tile.Rows * tile.Columns;
        }
    }

    private static void Add(ReadOnlySpan<ushort> line, uint[] totals, ref ulong sum)
    {
        ulong lineSum = 0;
        for (int x = 0; x < line.Length; x++)
        {
            lineSum += line[x];
            totals[x] += line[x];
        }

        sum += lineSum;
    }
}
