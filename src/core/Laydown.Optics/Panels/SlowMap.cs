namespace Laydown.Optics.Panels;

/// <summary>Values that change slowly over a picture, on a coarse grid, linear between cell centres.</summary>
internal sealed class SlowMap
{
    private const int MostCells = 128;

    /// <summary>A grid of zeros with about square cells.</summary>
    /// <param name="channels">Values of a cell.</param>
    /// <param name="width">Pixels of the picture across.</param>
    /// <param name="height">Pixels down.</param>
    internal SlowMap(int channels, int width, int height)
    {
        double cell = Math.Max(1, Math.Max(width, height) / (double)MostCells);
        (Channels, Columns, Rows) = (channels, Math.Max(1, (int)Math.Round(width / cell)), Math.Max(1, (int)Math.Round(height / cell)));
        Values = new float[channels * Columns * Rows];
    }

    internal int Channels { get; }

    internal int Columns { get; }

    internal int Rows { get; }

    /// <summary>Cell after cell, channels together.</summary>
    internal float[] Values { get; }

    /// <summary>The cell of a place, both from 0 to 1.</summary>
    internal int CellOf(double x, double y) =>
        (Math.Clamp((int)(y * Rows), 0, Rows - 1) * Columns) + Math.Clamp((int)(x * Columns), 0, Columns - 1);

    /// <summary>Values at a place, both from 0 to 1.</summary>
    internal void At(double x, double y, Span<float> values)
    {
        double across = Math.Clamp((x * Columns) - 0.5, 0, Columns - 1), down = Math.Clamp((y * Rows) - 0.5, 0, Rows - 1);
        int column = Math.Min((int)across, Math.Max(0, Columns - 2)), row = Math.Min((int)down, Math.Max(0, Rows - 2));
        float tx = (float)(across - column), ty = (float)(down - row);
        int right = Columns > 1 ? Channels : 0, below = Rows > 1 ? Channels * Columns : 0, at = Channels * ((row * Columns) + column);
        for (int i = 0; i < Channels; i++)
        {
            float top = Values[at + i] + (tx * (Values[at + right + i] - Values[at + i]));
            float bottom = Values[at + below + i] + (tx * (Values[at + below + right + i] - Values[at + below + i]));
            values[i] = top + (ty * (bottom - top));
        }
    }

    /// <summary>Makes it smooth: three box means each way, which together are nearly a normal curve.</summary>
    /// <param name="cells">Standard deviation, cells.</param>
    internal void Blur(double cells)
    {
        // Variance of a box of 2r + 1 cells is (r² + r)/3; three of them shall have cells².
        int radius = (int)Math.Round((Math.Sqrt(1 + (4 * cells * cells)) - 1) / 2);
        for (int pass = 0; pass < 3 && radius > 0; pass++)
        {
            for (int row = 0; row < Rows; row++)
                Box(row * Columns * Channels, Channels, Columns, radius);
            for (int column = 0; column < Columns; column++)
                Box(column * Channels, Columns * Channels, Rows, radius);
        }
    }

    private void Box(int start, int stride, int count, int radius)
    {
        float[] line = new float[count];
        for (int channel = 0; channel < Channels; channel++)
        {
            for (int i = 0; i < count; i++)
                line[i] = Values[start + channel + (i * stride)];
            for (int i = 0; i < count; i++)
            {
                // The edge's own value stands for what lies beyond it.
                float sum = 0;
                for (int j = i - radius; j <= i + radius; j++)
                    sum += line[Math.Clamp(j, 0, count - 1)];
                Values[start + channel + (i * stride)] = sum / ((2 * radius) + 1);
            }
        }
    }
}
