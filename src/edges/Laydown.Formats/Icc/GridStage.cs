namespace Laydown.Formats.Icc;

/// <summary>A table of any number of channels, read where it lies in the profile; multilinear between nodes. [ICC1]</summary>
internal sealed class GridStage
{
    private readonly ReadOnlyMemory<byte> table;
    private readonly int[] steps;
    private readonly int outputs, width;

    /// <summary>A table over <paramref name="bytes"/>.</summary>
    /// <param name="tag">Name for messages.</param>
    /// <param name="bytes">From the first value on; may be longer.</param>
    /// <param name="steps">Nodes along each channel, first channel slowest.</param>
    /// <param name="outputs">Values of each node.</param>
    /// <param name="width">Bytes of a value, 1 or 2.</param>
    /// <exception cref="TagFaultException">A channel has fewer than two nodes, or the bytes do not suffice.</exception>
    internal GridStage(string tag, ReadOnlyMemory<byte> bytes, int[] steps, int outputs, int width)
    {
        // Multiply step by step, so that an absurd size stops before it overflows.
        long values = outputs;
        foreach (int n in steps)
        {
            values *= n;
            if (n < 2 || width is not (1 or 2) || values * width > bytes.Length)
                throw new TagFaultException(
                    tag, Invariant($"table of {string.Join('×', steps)} nodes, {width} bytes a value, in {bytes.Length} bytes"),
                    "at least two nodes a channel, 1 or 2 bytes a value, all in the tag");
        }

        (table, this.steps, this.outputs, this.width, Length) = (bytes, steps, outputs, width, (int)values * width);
    }

    /// <summary>Bytes of the table.</summary>
    internal int Length { get; }

    /// <summary>Nodes along each channel.</summary>
    internal IReadOnlyList<int> Steps => steps;

    /// <summary>The values; channels beyond 0 to 1 hold the end.</summary>
    internal double[] At(ReadOnlySpan<double> channels)
    {
        Span<int> low = stackalloc int[steps.Length];
        Span<double> part = stackalloc double[steps.Length];
        for (int c = 0; c < steps.Length; c++)
        {
            double place = Math.Clamp(channels[c], 0, 1) * (steps[c] - 1);
            low[c] = Math.Min((int)place, steps[c] - 2);
            part[c] = place - low[c];
        }

        double[] sum = new double[outputs];
        ReadOnlySpan<byte> bytes = table.Span;
        for (int corner = 0; corner < 1 << steps.Length; corner++)
        {
            double weight = 1;
            int node = 0;
            for (int c = 0; c < steps.Length; c++)
            {
                int up = (corner >> c) & 1;
                weight *= up == 1 ? part[c] : 1 - part[c];
                node = (node * steps[c]) + low[c] + up;
            }

            for (int o = 0; o < outputs && weight != 0; o++)
                sum[o] += weight * Value(bytes, (node * outputs) + o);
        }

        return sum;
    }

    private double Value(ReadOnlySpan<byte> bytes, int at) => width == 1 ? bytes[at] / 255.0 : TagTable.U16(bytes[(2 * at)..]) / 65535.0;
}
