using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Separation;

/// <summary>Cuts each ink at its own limit, whatever came before.</summary>
/// <param name="limitsPercent">Most of each ink, percent of full laydown, 0 to 100, in the order of the planes.</param>
public sealed class PerInkLimit(IReadOnlyList<double> limitsPercent) : ITileStage
{
    private readonly ushort[] limits =
        [.. Bounds.NotEmpty(limitsPercent).Select(l => (ushort)Math.Floor(Bounds.Within(l, 0, 100) * Tile.Full / 100))];

    /// <summary>No neighbours needed.</summary>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks == limits.Length
        ? sourceInks
        : throw new ArgumentException(Invariant($"Limits: found {sourceInks} inks; wanted {limits.Length}."), nameof(sourceInks));

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int ink = 0; ink < source.Inks; ink++)
        {
            for (int row = 0; row < source.Rows; row++)
            {
                ReadOnlySpan<ushort> from = source.Row(ink, row);
                Span<ushort> to = target.Row(ink, row);
                for (int x = 0; x < from.Length; x++)
                    to[x] = Math.Min(from[x], limits[ink]);
            }
        }
    }
}
