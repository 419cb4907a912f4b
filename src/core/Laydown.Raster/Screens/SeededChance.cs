namespace Laydown.Raster.Screens;

/// <summary>Chance from a seed, the same everywhere: the mix of xorshift and multiplication known as splitmix, 64 bits; constants from
/// memory.</summary>
internal sealed class SeededChance(uint seed)
{
    private ulong state = seed;

    /// <summary>32 random bits.</summary>
    public uint Next()
    {
        state += 0x9E3779B97F4A7C15;
        ulong mixed = (state ^ (state >> 30)) * 0xBF58476D1CE4E5B9;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
        return (uint)((mixed ^ (mixed >> 31)) >> 32);
    }

    /// <summary>A number from 0 up to, but without, 1.</summary>
    public double Share() => Next() / 4294967296.0;
}
