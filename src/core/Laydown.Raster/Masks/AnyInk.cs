using System.Runtime.Intrinsics;
using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>One plane that holds at each pixel the greatest of several planes: how much any ink lays down there.</summary>
/// <remarks>Made at the resolution of the artwork, so that one plane is scaled instead of all; <see cref="Threshold"/> then makes a mask of it.</remarks>
public sealed class AnyInk : ITileStage
{
    private readonly IReadOnlyList<int>? planes;
    private readonly Lanes lanes;

    /// <summary>The greatest of all planes.</summary>
    public AnyInk()
        : this(null, LanesHere.Best)
    {
    }

    /// <summary>The greatest of some planes.</summary>
    /// <param name="planes">Planes looked at, from 0; at least one.</param>
    /// <exception cref="ArgumentException">No plane is named.</exception>
    public AnyInk(IReadOnlyList<int> planes)
        : this(Bounds.NotEmpty(planes), LanesHere.Best)
    {
    }

    internal AnyInk(IReadOnlyList<int>? planes, Lanes lanes)
    {
        this.planes = planes;
        this.lanes = lanes;
    }

    /// <summary>No neighbours needed.</summary>
    public int ReachPixels => 0;

    /// <summary>One plane.</summary>
    /// <exception cref="ArgumentException">A plane that is looked at is not there.</exception>
    public int TargetInks(int sourceInks) => planes is null || planes.All(p => p >= 0 && p < sourceInks)
        ? 1
        : throw new ArgumentException(Invariant($"Planes: found {string.Join(", ", planes)}; wanted 0 to {sourceInks - 1}."), nameof(sourceInks));

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        int count = planes?.Count ?? source.Inks;
        for (int row = 0; row < target.Rows; row++)
        {
            Span<ushort> most = target.Row(0, row);
            source.Row(planes?[0] ?? 0, row).CopyTo(most);
            for (int i = 1; i < count; i++)
                Take(source.Row(planes?[i] ?? i, row), most, lanes);
        }
    }

    /// <summary>Each value becomes the greater of itself and the other.</summary>
    internal static void Take(ReadOnlySpan<ushort> others, Span<ushort> most, Lanes lanes)
    {
        int x = 0;
        if (lanes == Lanes.Wide512)
        {
            for (; x <= most.Length - Vector512<ushort>.Count; x += Vector512<ushort>.Count)
                Vector512.Max(Vector512.Create(others[x..]), Vector512.Create<ushort>(most[x..])).CopyTo(most[x..]);
        }
        else if (lanes == Lanes.Wide256)
        {
            for (; x <= most.Length - Vector256<ushort>.Count; x += Vector256<ushort>.Count)
                Vector256.Max(Vector256.Create(others[x..]), Vector256.Create<ushort>(most[x..])).CopyTo(most[x..]);
        }

        for (; x < most.Length; x++)
            most[x] = Math.Max(most[x], others[x]);
    }
}
