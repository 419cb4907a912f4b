using System.Runtime.Intrinsics;
using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Full wherever a plane is over a threshold, bare elsewhere: a mask of two levels.</summary>
/// <remarks>After <see cref="AnyInk"/> it is the white under a picture. A value at the threshold itself is bare.</remarks>
public sealed class Threshold : ITileStage
{
    private readonly ushort threshold;
    private readonly Lanes lanes;

    /// <summary>A threshold for every plane.</summary>
    /// <param name="percent">Ink that still counts as none, percent of full laydown, 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside the range.</exception>
    public Threshold(double percent)
        : this(percent, LanesHere.Best)
    {
    }

    internal Threshold(double percent, Lanes lanes)
    {
        threshold = (ushort)(Bounds.Within(percent, 0, 100) * Tile.Full / 100);
        this.lanes = lanes;
    }

    /// <summary>No neighbours needed.</summary>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks;

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int ink = 0; ink < target.Inks; ink++)
        {
            for (int row = 0; row < target.Rows; row++)
                Cut(source.Row(ink, row), target.Row(ink, row), threshold, lanes);
        }
    }

    /// <summary>Full where a value is over the threshold, bare elsewhere.</summary>
    internal static void Cut(ReadOnlySpan<ushort> from, Span<ushort> to, ushort threshold, Lanes lanes)
    {
        int x = 0;
        if (lanes == Lanes.Wide512)
        {
            for (; x <= to.Length - Vector512<ushort>.Count; x += Vector512<ushort>.Count)
                Vector512.GreaterThan(Vector512.Create(from[x..]), Vector512.Create(threshold)).CopyTo(to[x..]);
        }
        else if (lanes == Lanes.Wide256)
        {
            for (; x <= to.Length - Vector256<ushort>.Count; x += Vector256<ushort>.Count)
                Vector256.GreaterThan(Vector256.Create(from[x..]), Vector256.Create(threshold)).CopyTo(to[x..]);
        }

        for (; x < to.Length; x++)
            to[x] = from[x] > threshold ? Tile.Full : (ushort)0;
    }
}
