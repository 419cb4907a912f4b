using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Counts what differs between two press files of the same shape.</summary>
/// <param name="inks">Names of the inks.</param>
/// <param name="columns">Pixels of a row.</param>
internal sealed class PixelCount(IReadOnlyList<string> inks, int columns)
{
    private readonly long[] different = new long[inks.Count], first = new long[inks.Count], second = new long[inks.Count];
    private long pixels;
    private int row = -1, column = -1, largest;

    /// <summary>Counts all rows.</summary>
    public PixelDifference Over(PressRows one, PressRows other, CancellationToken cancellation)
    {
        byte[] values = new byte[columns * inks.Count], others = new byte[columns * inks.Count];
        for (int y = 0; y < one.Rows; y++)
        {
            cancellation.ThrowIfCancellationRequested();
            bool same = one.Read(y).SequenceEqual(other.Read(y));
            one.AddTo(first);
            other.AddTo(second);
            if (same)
                continue;
            one.Unpack(values);
            other.Unpack(others);
            Add(y, values, others);
        }

        double all = (double)columns * one.Rows;
        return new(
            pixels, (long)columns * one.Rows, row, column, largest,
            [.. inks.Select((name, ink) => new InkDifference(name, different[ink], first[ink] / all, second[ink] / all))]);
    }

    private void Add(int y, ReadOnlySpan<byte> values, ReadOnlySpan<byte> others)
    {
        for (int x = 0; x < columns; x++)
        {
            bool differs = false;
            for (int ink = 0; ink < inks.Count; ink++)
            {
                (byte value, byte other) = (values[(x * inks.Count) + ink], others[(x * inks.Count) + ink]);
                if (value == other)
                    continue;
                differs = true;
                different[ink]++;
                largest = Math.Max(largest, Math.Abs(value - other));
            }

            if (!differs)
                continue;
            if (pixels++ == 0)
                (row, column) = (y, x);
        }
    }
}
