using Laydown.Output.PressFiles;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;
using Laydown.Shop.Layers;

namespace Laydown.Output.Layers;

/// <summary>Gives the planes of one layer of a look at the resolution that is asked for; at its own they come through as they are.</summary>
/// <param name="planes">All planes of the look.</param>
/// <param name="firstPlane">First plane of the layer.</param>
/// <param name="inks">Planes of the layer.</param>
internal sealed class LookLayerTiles(LookPlanes planes, int firstPlane, int inks)
{
    private const int BandRows = 32;

    /// <summary>Pours the layer into a sink.</summary>
    /// <param name="rows">Rows wanted.</param>
    /// <param name="columns">Columns wanted.</param>
    /// <param name="sink">Takes bands of 16-bit values, from several threads.</param>
    /// <param name="cancellation">Looked at before each band.</param>
    /// <returns>Highest sum of the planes at one pixel as they are stored, codes of 255.</returns>
    public int Pour(int rows, int columns, ITileSink sink, CancellationToken cancellation)
    {
        bool same = rows == planes.Height && columns == planes.Width;
        AxisWeights? down = same ? null : new(planes.Height, rows), across = same ? null : new(planes.Width, columns);
        AllCores.Run(((rows - 1) / BandRows) + 1, () => 0, Band, cancellation);
        return HighestSum(cancellation);

        void Band(int band, int own)
        {
            int top = band * BandRows;
            Tile tile = new(inks, Math.Min(BandRows, rows - top), columns);
            for (int row = 0; row < tile.Rows; row++)
            {
                for (int ink = 0; ink < inks; ink++)
                {
                    if (down is null || across is null)
                        Copy(ink, top + row, tile.Row(ink, row));
                    else
                        Resample(ink, down, top + row, across, tile.Row(ink, row));
                }
            }

            sink.Take(top, 0, tile);
        }
    }

    private void Copy(int ink, int row, Span<ushort> target)
    {
        byte[] line = new byte[planes.Width];
        planes.ReadRow(firstPlane + ink, row, 0, line);
        for (int x = 0; x < line.Length; x++)
            target[x] = EightBits.Widened(line[x]);
    }

    private void Resample(int ink, AxisWeights down, int row, AxisWeights across, Span<ushort> target)
    {
        byte[] line = new byte[planes.Width];
        float[] column = new float[planes.Width];
        ReadOnlySpan<float> weights = down.Weights(row);
        for (int i = 0; i < weights.Length; i++)
        {
            planes.ReadRow(firstPlane + ink, down.First(row) + i, 0, line);
            for (int x = 0; x < line.Length; x++)
                column[x] += weights[i] * line[x];
        }

        // Rounded down: means of sums within a limit stay within it.
        for (int x = 0; x < target.Length; x++)
        {
            float sum = 0;
            ReadOnlySpan<float> parts = across.Weights(x);
            for (int i = 0; i < parts.Length; i++)
                sum += parts[i] * column[across.First(x) + i];
            target[x] = (ushort)Math.Clamp((sum * 257) - 0.01f, 0, Tile.Full);
        }
    }

    private int HighestSum(CancellationToken cancellation)
    {
        int[] highest = new int[planes.Height];
        AllCores.Run(
            planes.Height,
            () => (new byte[planes.Width], new int[planes.Width]),
            (row, own) => highest[row] = HighestSum(row, own.Item1, own.Item2),
            cancellation);
        return highest.Max();
    }

    private int HighestSum(int row, byte[] line, int[] sums)
    {
        Array.Clear(sums);
        for (int ink = 0; ink < inks; ink++)
        {
            planes.ReadRow(firstPlane + ink, row, 0, line);
            for (int x = 0; x < line.Length; x++)
                sums[x] += line[x];
        }

        return sums.Max();
    }
}
