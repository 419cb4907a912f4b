namespace Laydown.Layout.Patterns;

/// <summary>The costs that whole numbers of sheets add up to: a bound is lifted to the next of them.</summary>
internal sealed class CostSteps
{
    private const int Most = 1 << 16;

    private readonly double unit;
    private readonly bool[] reached = [];

    internal CostSteps(IEnumerable<double> costs)
    {
        double[] all = [.. costs.Distinct().Order()];
        if (!all.All(c => c > 0 && c == Math.Floor(c) && c <= int.MaxValue))
            return;
        unit = all.Aggregate(0, (a, b) => CutGrid.Common(a, (int)b));
        reached = new bool[Most];
        reached[0] = true;
        foreach (int step in all.Select(c => (int)(c / unit)))
            for (int i = step; i < Most; i++)
                reached[i] |= reached[i - step];
    }

    /// <summary>The least attainable cost that is no less, but for rounding.</summary>
    internal double Up(double bound)
    {
        if (reached.Length == 0)
            return bound;
        double steps = Math.Ceiling((bound / unit) - (3e-6 * Math.Max(1, bound / unit)));
        while (steps < Most && !reached[(int)Math.Max(0, steps)])
            steps++;
        return Math.Max(0, steps) * unit;
    }
}
