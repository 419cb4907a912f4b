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
    private readonly Tile?[] kept;

    /// <summary>A chain of at least one stage.</summary>
    /// <exception cref="ArgumentException">There is no stage.</exception>
    public StageChain(IReadOnlyList<ITileStage> stages)
    {
        this.stages = Bounds.NotEmpty(stages);
        kept = new Tile?[stages.Count + 1];
    }

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

    private Tile RunTile(ITileSource source, int row, int column, int rows, int columns)
    {
        int reach = ReachPixels;
        Tile current = Fitting(0, source.Inks, rows + (2 * reach), columns + (2 * reach));
        current.PlaceAt(row - reach, column - reach);
        Fill(source, row - reach, column - reach, current);
        for (int step = 0; step < stages.Count; step++)
        {
            reach -= stages[step].ReachPixels;
            Tile next = Fitting(step + 1, stages[step].TargetInks(current.Inks), rows + (2 * reach), columns + (2 * reach));
            next.PlaceAt(row - reach, column - reach);
            stages[step].Run(current, next);
            current = next;
        }

        return current;
    }

    private Tile Fitting(int place, int inks, int rows, int columns)
    {
        if (kept[place] is { } old && old.Inks == inks && old.Rows == rows && old.Columns == columns)
            return old;
        Tile fresh = new(inks, rows, columns);
        kept[place] = fresh;
        return fresh;
    }

    private static void Fill(ITileSource source, int firstRow, int firstColumn, Tile tile)
    {
        // Columns that lie on the picture are read, the rest repeat its outermost column.
        int from = Math.Clamp(firstColumn, 0, source.Columns - 1);
        int to = Math.Clamp(firstColumn + tile.Columns, from + 1, source.Columns);
        int left = Math.Max(0, from - firstColumn);
        for (int ink = 0; ink < tile.Inks; ink++)
        {
            for (int row = 0; row < tile.Rows; row++)
            {
                Span<ushort> line = tile.Row(ink, row);
                source.ReadRow(ink, Math.Clamp(firstRow + row, 0, source.Rows - 1), from, line.Slice(left, to - from));
                line[..left].Fill(line[left]);
                line[(left + to - from)..].Fill(line[left + to - from - 1]);
            }
        }
    }
}
