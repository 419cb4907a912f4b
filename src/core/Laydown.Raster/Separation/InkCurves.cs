using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Separation;

/// <summary>Sends each ink through its own calibration curve.</summary>
/// <param name="curves">One curve for each ink, in the order of the planes.</param>
public sealed class InkCurves(IReadOnlyList<InkCurve> curves) : ITileStage
{
    private readonly IReadOnlyList<InkCurve> curves = Bounds.NotEmpty(curves);

    /// <summary>No neighbours needed.</summary>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks == curves.Count
        ? sourceInks
        : throw new ArgumentException(Invariant($"Curves: found {sourceInks} inks; wanted {curves.Count}."), nameof(sourceInks));

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int ink = 0; ink < source.Inks; ink++)
        {
            InkCurve curve = curves[ink];
            for (int row = 0; row < source.Rows; row++)
            {
                if (curve.LeavesAll)
                    source.Row(ink, row).CopyTo(target.Row(ink, row));
                else
                    LookUps.Run(source.Row(ink, row), curve.Table, target.Row(ink, row));
            }
        }
    }
}
