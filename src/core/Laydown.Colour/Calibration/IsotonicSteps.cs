using Laydown.Measures;

namespace Laydown.Colour.Calibration;

/// <summary>The never-falling values nearest to measured ones by least squares: neighbours that fall are pooled [Ayer1955].</summary>
public static class IsotonicSteps
{
    /// <summary>Pools neighbours until none falls.</summary>
    /// <param name="values">Measured values in order.</param>
    /// <param name="weights">Weight of each, over 0.</param>
    /// <returns>The pools in order: index of the first and last value, and their weighted mean; means strictly ascending.</returns>
    /// <exception cref="ArgumentException">Another number of weights, or a weight not over 0.</exception>
    public static IReadOnlyList<(int First, int Last, double Value)> Pools(IReadOnlyList<double> values, IReadOnlyList<double> weights)
    {
        Bounds.NotEmpty(values);
        if (weights.Count != values.Count || weights.Any(w => !(w > 0)))
            throw new ArgumentException(Invariant($"Weights: found {weights.Count}; wanted {values.Count}, each over 0."), nameof(weights));
        List<(int First, int Last, double Value, double Weight)> pools = [];
        for (int i = 0; i < values.Count; i++)
        {
            (int First, int Last, double Value, double Weight) pool = (i, i, values[i], weights[i]);
            while (pools.Count > 0 && pools[^1].Value >= pool.Value)
            {
                var before = pools[^1];
                double weight = before.Weight + pool.Weight;
                pool = (before.First, i, ((before.Value * before.Weight) + (pool.Value * pool.Weight)) / weight, weight);
                pools.RemoveAt(pools.Count - 1);
            }

            pools.Add(pool);
        }

        return [.. pools.Select(p => (p.First, p.Last, p.Value))];
    }
}
