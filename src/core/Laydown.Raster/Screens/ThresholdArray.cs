namespace Laydown.Raster.Screens;

/// <summary>An order in which the dots of a square are set one after the other, repeated over the sheet without a seam.</summary>
/// <param name="Ranks">Place of each dot in the order, rows × columns, 0 to 65535, each once.</param>
public sealed record ThresholdArray(ushort[] Ranks)
{
    /// <summary>Side of the square, px.</summary>
    public const int Side = 256;

    /// <summary>Value that contone must exceed for the dot of this rank.</summary>
    /// <remarks>
    /// There are 65 536 dots but only 65 535 steps from bare to full: the two ranks in the middle share a threshold. So 0 sets no dot,
    /// 65535 sets
    /// all, and of every tint the share of dots lies within half a dot of 65 536 of the tint.
    /// </remarks>
    public static ushort Threshold(int rank) => (ushort)(rank - (rank >> 15));

    /// <summary>The same order, begun elsewhere.</summary>
    /// <param name="rows">Down, px.</param>
    /// <param name="columns">Across, px.</param>
    public ThresholdArray Shifted(int rows, int columns)
    {
        ushort[] shifted = new ushort[Ranks.Length];
        for (int place = 0; place < shifted.Length; place++)
        {
            int row = ((place / Side) + rows) & (Side - 1), column = ((place % Side) + columns) & (Side - 1);
            shifted[place] = Ranks[(row * Side) + column];
        }

        return new(shifted);
    }
}
