namespace Laydown.Layout.Packing;

/// <summary>A small generator of chance from a seed: the same seed gives the same course on every machine.</summary>
/// <remarks>SplitMix64 [Steele2014].</remarks>
public sealed class Chance(long seed)
{
    private ulong state = unchecked((ulong)seed);

    /// <summary>A whole number from 0 to <paramref name="count"/> − 1.</summary>
    public int Below(int count) => (int)(Next() % (ulong)count);

    /// <summary>A number from 0 to under 1.</summary>
    public double Share() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Sixty-four bits of chance.</summary>
    public ulong Next()
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15UL;
            ulong z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
