namespace Laydown.Plan.Week;

/// <summary>Moves by chance: two jobs swapped, or a block of neighbours shifted; short blocks and short ways more often than long ones.</summary>
/// <remarks>
/// On published instances swaps of jobs one or two places apart were taken a hundred times as often as those over ten places and more, and these filled most of the
/// draws: ways are drawn with chance as 1/way, blocks as 1/(block √block). All of a move comes from one draw.
/// </remarks>
internal sealed class SequenceMoves
{
    /// <summary>Longest block that is shifted as a whole, jobs; on published instances longer ones gained nothing.</summary>
    private const int MostBlock = 13;

    private const int Entries = 1024;

    /// <summary>Swaps among 256 moves.</summary>
    private const uint Swaps = 96;

    private readonly int count;
    private readonly short[] blocks;
    private readonly short[] ways;

    /// <summary>Moves of an order of <paramref name="count"/> jobs, 2 or more.</summary>
    internal SequenceMoves(int count)
    {
        this.count = count;
        blocks = Table(Math.Min(MostBlock, count - 1), k => 1 / (k * Math.Sqrt(k)));
        ways = Table(Math.Min(short.MaxValue, count - 1), k => 1.0 / k);
    }

    /// <summary>A move.</summary>
    internal SequenceMove Pick(WeekChance chance)
    {
        ulong bits = chance.Next();
        int way = ways[(int)(bits >> 8) & (Entries - 1)], block = blocks[(int)(bits >> 18) & (Entries - 1)];
        ulong place = bits >> 32;
        if ((bits & 255) < Swaps)
        {
            int one = (int)((place * (ulong)(count - way)) >> 32);
            return new(one, one + 1, one + way, one + way + 1);
        }

        // The block goes that many places later or earlier: it changes places with the jobs on its way.
        way = Math.Min(way, count - block);
        int from = (int)((place * (ulong)(count - block - way + 1)) >> 32), middle = from + ((bits & (1UL << 31)) != 0 ? block : way);
        return new(from, middle, middle, from + block + way);
    }

    // Lengths from 1 on, each as often as its weight asks.
    private static short[] Table(int most, Func<int, double> weight)
    {
        double[] weights = [.. Enumerable.Range(1, most).Select(weight)];
        double all = weights.Sum(), before = 0;
        short[] table = new short[Entries];
        for (int entry = 0, k = 0; entry < Entries; entry++)
        {
            for (; k < most - 1 && before + weights[k] < (entry + 0.5) / Entries * all; k++)
                before += weights[k];
            table[entry] = (short)(k + 1);
        }

        return table;
    }
}
