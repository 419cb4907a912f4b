namespace Laydown.Demo.Art;

/// <summary>Numbers that look thrown but are the same for the same start (xorshift).</summary>
internal sealed class Chance(ulong start)
{
    private ulong state = (start * 0x9E3779B97F4A7C15) | 1;

    /// <summary>From 0 up to, not including, 1.</summary>
    public double Next()
    {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        return (state >> 11) * (1.0 / (1UL << 53));
    }

    public double Between(double least, double most) => least + ((most - least) * Next());

    public T Pick<T>(IReadOnlyList<T> from) => from[(int)(Next() * from.Count)];
}
