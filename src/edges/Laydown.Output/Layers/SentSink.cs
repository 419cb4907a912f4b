using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;

namespace Laydown.Output.Layers;

/// <summary>Hands on what to send so that the laydown of each tile acts; the limit of the layer holds for what is sent.</summary>
/// <param name="sink">Takes the tiles.</param>
/// <param name="curves">For each plane, laydown that is to act → laydown sent.</param>
/// <param name="limitPercent">Largest sum of the layer, percent of one full ink.</param>
internal sealed class SentSink(ITileSink sink, IReadOnlyList<InkCurve> curves, double limitPercent) : ITileSink
{
    private readonly TotalInkLimit limit = new(limitPercent, null);
    private readonly InkCurves sent = new(curves);

    /// <inheritdoc/>
    public void Take(int firstRow, int firstColumn, Tile tile)
    {
        Tile curved = new(tile.Inks, tile.Rows, tile.Columns), limited = new(tile.Inks, tile.Rows, tile.Columns);
        sent.Run(tile, curved);
        limit.Run(curved, limited);
        sink.Take(firstRow, firstColumn, limited);
    }
}
