using Laydown.Layout.Packing;

namespace Laydown.Plan.Week;

/// <summary>A small generator of chance from a seed: the same seed gives the same order on every machine.</summary>
/// <remarks>The bits are those of the layout search; numbers below a count are cut from their upper half.</remarks>
internal sealed class WeekChance(long seed)
{
    private const int PatienceSteps = 4096;

    // Minus the logarithm of the middle of each of as many equal steps from 0 to 1.
    private static readonly double[] PatienceTable = [.. Enumerable.Range(0, PatienceSteps).Select(i => MinusLog((i + 0.5) / PatienceSteps))];

    private readonly Chance chance = new(seed);

    /// <summary>A whole number from 0 to <paramref name="count"/> − 1.</summary>
    internal int Below(int count) => (int)(((Next() >> 32) * (ulong)(uint)count) >> 32);

    /// <summary>How much worse a change may be at warmth 1: exponentially distributed with mean 1.</summary>
    internal double Patience() => PatienceTable[Next() >> 52];

    /// <summary>A number from 0 to under 1.</summary>
    internal double Share() => chance.Share();

    /// <summary>Minus the natural logarithm of a number above 0 and up to 1, by a series and by halving, so that no machine's own has a say.</summary>
    internal static double MinusLog(double x)
    {
        const double ln2 = 0.69314718055994530942;
        int halvings = 0;
        for (; x < 0.75; x *= 2)
            halvings++;
        double z = (x - 1) / (x + 1), power = z, sum = 0;
        for (int k = 1; k < 40; k += 2, power *= z * z)
            sum += power / k;
        return (halvings * ln2) - (2 * sum);
    }

    internal ulong Next() => chance.Next();
}
