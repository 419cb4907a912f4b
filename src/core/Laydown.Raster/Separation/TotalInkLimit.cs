using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Separation;

/// <summary>Takes ink off a pixel where the sum of its inks exceeds what the print condition allows.</summary>
/// <remarks>
/// Black is kept, because it holds the drawing; the other inks are scaled down together. Only where black alone exceeds the limit it is cut too.
/// Rounds down: the limit always holds. A pixel at or under the limit is untouched. Keeps nothing between tiles.
/// </remarks>
/// <param name="limitPercent">Largest sum, percent of one full ink, 0 to 6400.</param>
/// <param name="blackInk">Plane of the black ink, or null where all inks are scaled alike.</param>
public sealed class TotalInkLimit(double limitPercent, int? blackInk) : ITileStage
{
    private readonly uint limit = (uint)Math.Floor(Bounds.Within(limitPercent, 0, 6400) * Tile.Full / 100);

    /// <summary>No neighbours needed: the stage looks at one pixel alone.</summary>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks;

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        uint[] others = new uint[source.Columns];
        for (int row = 0; row < source.Rows; row++)
        {
            // Add up all inks but black, and note whether any pixel of the row is over the limit.
            Array.Clear(others);
            for (int ink = 0; ink < source.Inks; ink++)
            {
                source.Row(ink, row).CopyTo(target.Row(ink, row));
                if (ink != blackInk)
                    AddTo(others, source.Row(ink, row));
            }

            Span<ushort> black = blackInk is { } plane ? target.Row(plane, row) : default;
            for (int x = 0; x < others.Length; x++)
            {
                uint kept = black.IsEmpty ? 0u : black[x];
                if (others[x] + kept > limit)
                    CutPixel(target, row, x, others[x], kept);
            }
        }
    }

    private void CutPixel(Tile target, int row, int x, uint others, uint black)
    {
        uint blackLeft = Math.Min(black, limit);
        uint room = limit - blackLeft;
        for (int ink = 0; ink < target.Inks; ink++)
        {
            Span<ushort> line = target.Row(ink, row);
            line[x] = ink == blackInk ? (ushort)blackLeft : (ushort)((ulong)line[x] * room / Math.Max(others, 1));
        }
    }

    private static void AddTo(uint[] sum, ReadOnlySpan<ushort> line)
    {
        for (int x = 0; x < line.Length; x++)
            sum[x] += line[x];
    }
}
