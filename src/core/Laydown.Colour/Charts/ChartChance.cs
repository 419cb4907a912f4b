namespace Laydown.Colour.Charts;

/// <summary>Chance from a seed: the same numbers each time. SplitMix64 [Steele2014].</summary>
internal sealed class ChartChance(int seed)
{
    private ulong state = (ulong)(uint)seed;

    /// <summary>A whole number from 0 to under <paramref name="count"/>.</summary>
    internal int Below(int count) => (int)(Part() * count);

    /// <summary>A number from 0 to under 1.</summary>
    internal double Part()
    {
        state += 0x9E3779B97F4A7C15;
        ulong z = (state ^ (state >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }
}
