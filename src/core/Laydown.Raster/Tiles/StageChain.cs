using Laydown.Measures;

namespace Laydown.Raster.Tiles;

/// <summary>Stages one behind the other, run over a picture tile by tile.</summary>
/// <remarks>
/// The picture goes on outside its edges with the values of its edge pixels, so every stage sees the same plane whatever the tiling:
/// the same picture gives the same bytes for any tile size. Not for several threads at once.
/// </remarks>
public sealed class StageChain
{
    private readonly IReadOnlyList<ITileStage> stages;
    private readonly Tile start = new(1, 1, 1);
    private readonly StageRun run = new();

    /// <summary>A chain of at least one stage.</summary>
    /// <exception cref="ArgumentException">There is no stage.</exception>
    public StageChain(IReadOnlyList<ITileStage> stages) => this.stages = Bounds.NotEmpty(stages);

    /// <summary>How far to each side a result depends on the picture: the reaches of all stages added up.</summary>
    public int ReachPixels => stages.Sum(s => s.ReachPixels);

    /// <summary>How many inks come out.</summary>
    public int TargetInks(int sourceInks) => stages.Aggregate(sourceInks, (inks, stage) => stage.TargetInks(inks));

    /// <summary>Runs the whole picture through, tiles from left to right, then from top to bottom.</summary>
    /// <param name="source">The picture.</param>
    /// <param name="tileRows">Rows of a tile, at least 1.</param>
    /// <param name="tileColumns">Columns of a tile, at least 1; as wide as the picture for bands.</param>
    /// <param name="sink">Takes the results.</param>
    /// <param name="cancellation">Looked at before each tile.</param>
    public void Run(ITileSource source, int tileRows, int tileColumns, ITileSink sink, CancellationToken cancellation)
    {
        Bounds.Within(tileRows, 1, int.MaxValue);
        Bounds.Within(tileColumns, 1, int.MaxValue);
        for (int row = 0; row < source.Rows; row += Math.Min(tileRows, source.Rows - row))
        {
            for (int column = 0; column < source.Columns; column += Math.Min(tileColumns, source.Columns - column))
            {
                cancellation.ThrowIfCancellationRequested();
                int rows = Math.Min(tileRows, source.Rows - row);
                int columns = Math.Min(tileColumns, source.Columns - column);
                sink.Take(row, column, RunTile(source, row, column, rows, columns));
            }
        }
    }

    /// <summary>One tile of the result, as <see cref="Run"/> would give it: for callers that share a picture out to chains of several threads.</summary>
    /// <param name="source">The picture.</param>
    /// <param name="row">First row of the tile.</param>
    /// <param name="column">First column of the tile.</param>
    /// <param name="rows">Rows of the tile, within the picture.</param>
    /// <param name="columns">Columns of the tile, within the picture.</param>
    /// <returns>A tile that holds until the next call.</returns>
    public Tile RunTile(ITileSource source, int row, int column, int rows, int columns)
    {
        int reach = ReachPixels;
        start.Shape(source.Inks, rows + (2 * reach), columns + (2 * reach));
        start.PlaceAt(row - reach, column - reach);
        SourceTile.Fill(source, start);
        return run.Through(stages, start);
    }
}
