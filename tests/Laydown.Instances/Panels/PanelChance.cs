namespace Laydown.Instances.Panels;

/// <summary>Numbers by chance from a seed, the same on every machine [Steele2014].</summary>
internal sealed class PanelChance(int seed)
{
    private ulong state = unchecked((ulong)seed * 0x9E3779B97F4A7C15UL);

    /// <summary>A whole number from the least to the most, both allowed.</summary>
    public int Between(int least, int most)
    {
        state = unchecked(state + 0x9E3779B97F4A7C15UL);
        ulong z = state;
        z = unchecked((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL);
        z = unchecked((z ^ (z >> 27)) * 0x94D049BB133111EBUL);
        return least + (int)((z ^ (z >> 31)) % (ulong)(most - least + 1));
    }
}
