namespace Laydown.Output.Layers;

/// <summary>How pixels along one axis become more or fewer: means over what a pixel covers, or values in between; never more than the largest.</summary>
internal sealed class AxisWeights
{
    private readonly int[] first;
    private readonly float[][] weights;

    /// <summary>The weights from one number of pixels to another.</summary>
    public AxisWeights(int from, int to)
    {
        first = new int[to];
        weights = new float[to][];
        double step = (double)from / to;
        for (int at = 0; at < to; at++)
            (first[at], weights[at]) = step >= 1 ? Covered(at * step, (at + 1) * step, from) : Between(((at + 0.5) * step) - 0.5, from);
    }

    /// <summary>First pixel that counts for a pixel of the result.</summary>
    public int First(int at) => first[at];

    /// <summary>Weights from there on; their sum is 1.</summary>
    public ReadOnlySpan<float> Weights(int at) => weights[at];

    private static (int First, float[] Weights) Covered(double start, double end, int count)
    {
        int left = (int)Math.Floor(start + 1e-9), right = Math.Min(count, (int)Math.Ceiling(end - 1e-9));
        float[] weights = new float[Math.Max(1, right - left)];
        for (int i = 0; i < weights.Length; i++)
            weights[i] = (float)((Math.Min(end, left + i + 1) - Math.Max(start, left + i)) / (end - start));
        return (left, weights);
    }

    private static (int First, float[] Weights) Between(double place, int count)
    {
        double held = Math.Clamp(place, 0, count - 1);
        int left = Math.Min((int)held, Math.Max(0, count - 2));
        return count == 1 ? (0, [1]) : (left, [(float)(1 - (held - left)), (float)(held - left)]);
    }
}
