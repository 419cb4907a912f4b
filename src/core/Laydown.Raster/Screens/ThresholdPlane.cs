namespace Laydown.Raster.Screens;

/// <summary>Values of an array laid out for the kernels: within each group of as many dots as a byte holds, the last comes first; rows
/// carry their beginning once more behind their end.</summary>
/// <remarks>Files want the first dot in the highest bit, compare instructions give the first dot the lowest: turning the groups round here
/// and the pixels as they are read settles it.</remarks>
internal sealed class ThresholdPlane
{
    /// <summary>Values the kernels may read from any column of the array on, within one row.</summary>
    public const int Run = 64;

    private const int Side = ThresholdArray.Side;
    private const int Stride = Side + Run;
    private readonly ushort[] values = new ushort[Side * Stride];

    /// <summary>Lays out <paramref name="ranks"/>, each put through <paramref name="value"/>.</summary>
    /// <param name="ranks">256 × 256.</param>
    /// <param name="value">What is kept for a rank.</param>
    /// <param name="bitsPerDot">1 turns groups of 8 round, 2 groups of 4.</param>
    public ThresholdPlane(ThresholdArray ranks, Func<ushort, ushort> value, int bitsPerDot)
    {
        int last = (8 / bitsPerDot) - 1;
        for (int row = 0; row < Side; row++)
        {
            for (int column = 0; column < Stride; column++)
                values[(row * Stride) + column] = value(ranks.Ranks[(row * Side) + ((column ^ last) & (Side - 1))]);
        }
    }

    /// <summary>The values of one row of the sheet.</summary>
    public ReadOnlySpan<ushort> Row(int row) => values.AsSpan((row & (Side - 1)) * Stride, Stride);
}
