using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster;

/// <summary>A picture of made-up values: a function of plane, row and column.</summary>
internal sealed class Picture(int inks, int rows, int columns, Func<int, int, int, ushort> value) : ITileSource
{
    public int Inks => inks;

    public int Rows => rows;

    public int Columns => columns;

    public ushort this[int ink, int row, int column] => value(ink, row, column);

    public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
    {
        for (int x = 0; x < into.Length; x++)
            into[x] = value(ink, row, firstColumn + x);
    }

    /// <summary>The values of each plane after the stages.</summary>
    public ushort[] Through(IReadOnlyList<ITileStage> stages, int tileRows, int tileColumns)
    {
        StageChain chain = new(stages);
        Gathered all = new(chain.TargetInks(inks), rows, columns);
        chain.Run(this, tileRows, tileColumns, all, CancellationToken.None);
        return all.Values;
    }

    public ushort[] Through(params IReadOnlyList<ITileStage> stages) => Through(stages, rows, columns);

    /// <summary>Values without order, the same for the same seed.</summary>
    public static Picture Noise(int inks, int rows, int columns, uint seed) => new(inks, rows, columns, (i, y, x) => (ushort)Hash(seed, i, y, x));

    /// <summary>Bare and full in blobs: full where coarse and fine noise together lie under a share.</summary>
    public static Picture Mask(int rows, int columns, uint seed, double share, int grain) => new(1, rows, columns, (_, y, x) =>
        (Hash(seed, 0, y / grain, x / grain) & 0xFFFF) < share * 65536 && (Hash(seed + 1, 1, y, x) & 0xFFFF) < 65000 ? Tile.Full : (ushort)0);

    public static uint Hash(uint seed, int ink, int row, int column)
    {
        uint h = seed * 2654435761;
        h = (h ^ (uint)ink) * 2246822519;
        h = (h ^ (h >> 15) ^ (uint)row) * 3266489917;
        h = (h ^ (h >> 13) ^ (uint)column) * 668265263;
        return (h ^ (h >> 16)) * 374761393 >> 8;
    }

    private sealed class Gathered(int inks, int rows, int columns) : ITileSink
    {
        public ushort[] Values { get; } = new ushort[inks * rows * columns];

        public void Take(int firstRow, int firstColumn, Tile tile)
        {
            for (int ink = 0; ink < tile.Inks; ink++)
            {
                for (int row = 0; row < tile.Rows; row++)
                    tile.Row(ink, row).CopyTo(Values.AsSpan((((ink * rows) + firstRow + row) * columns) + firstColumn, tile.Columns));
            }
        }
    }
}
