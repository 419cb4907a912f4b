using Laydown.Raster.Tiles;

namespace Laydown.Raster.Screens;

/// <summary>Inks that share one array: one alone, or several whose dots follow each other in its order.</summary>
internal sealed class ScreenChain
{
    private const int Run = 2048;
    private readonly int[] inks;
    private readonly int bits;
    private readonly ThresholdPlane[] limits;
    private readonly ThresholdPlane ranks;
    private readonly DropMix mix;

    /// <summary>A chain.</summary>
    /// <param name="inks">Planes of the tile, first the one whose dots are to be quietest.</param>
    /// <param name="array">Their order of dots.</param>
    /// <param name="mix">Shares of the drops.</param>
    /// <param name="bits">Bits of a dot.</param>
    public ScreenChain(IReadOnlyList<int> inks, ThresholdArray array, DropMix mix, int bits)
    {
        this.inks = [.. inks];
        this.mix = mix;
        this.bits = bits;
        ranks = new(array, rank => rank, bits);
        limits = new ThresholdPlane[mix.Steps];
        for (int step = 0; step < limits.Length; step++)
        {
            ushort[] byThreshold = mix[step].Limits();
            limits[step] = new(array, rank => byThreshold[ThresholdArray.Threshold(rank)], bits);
        }
    }

    /// <summary>Screens one row of all inks of the chain.</summary>
    /// <param name="lanes">Width to work with.</param>
    /// <param name="tile">Contone, without margin.</param>
    /// <param name="row">Row of the tile and of the target.</param>
    /// <param name="columns">How many columns of it.</param>
    /// <param name="target">Takes the dots.</param>
    /// <param name="firstByte">Byte of the target's rows that takes the first dot.</param>
    public void Row(Lanes lanes, Tile tile, int row, int columns, DotRows target, int firstByte)
    {
        if (inks.Length == 1)
        {
            ArrayKernel.Row(
                lanes, tile.Row(inks[0], row)[..columns], limits, bits, tile.FirstRow + row, tile.FirstColumn, target.Row(inks[0], row)[firstByte..]);
            return;
        }

        // So many columns at once that what is taken stays near the processor.
        Span<ushort> taken = stackalloc ushort[Run];
        ReadOnlySpan<ushort> order = ranks.Row(tile.FirstRow + row);
        for (int at = 0; at < columns; at += Run)
        {
            int count = Math.Min(columns - at, Run);
            taken[..Math.Min(count + 8, Run)].Clear();
            foreach (int ink in inks)
            {
                IntervalKernel.Row(
                    lanes, tile.Row(ink, row).Slice(at, count), order, tile.FirstColumn + at, mix, bits, taken, target.Row(ink, row)[(firstByte + (at * bits / 8))..]);
            }
        }
    }
}
