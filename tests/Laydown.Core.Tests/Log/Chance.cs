namespace Laydown.Core.Tests.Log;

/// <summary>Chance from a seed, for simulated logs.</summary>
internal sealed class Chance(ulong seed)
{
    private ulong state = seed;

    /// <summary>Even between 0 and 1, neither of them.</summary>
    public double Even()
    {
        ulong z = state += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return (((z ^ (z >> 31)) >> 11) + 0.5) / 9007199254740992.0;
    }

    /// <summary>A normal value of mean 0 and spread 1.</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(Even())) * Math.Cos(2 * Math.PI * Even());

    /// <summary>A whole number from 0 to under <paramref name="most"/>.</summary>
    public int Under(int most) => (int)(Even() * most);
}
