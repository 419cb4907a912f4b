namespace Laydown.Instances.Panels;

/// <summary>Makes axes to be parted from a seed: the same seed gives the same axis everywhere.</summary>
public static class PanelGenerator
{
    /// <summary>A small axis that can be searched by trying all.</summary>
    public static PanelInstance Small(int seed)
    {
        PanelChance chance = new(seed);
        int least = chance.Between(-2, 2), most = least + chance.Between(0, 2);
        int longest = chance.Between(Math.Max(5, 2 * most), 14);
        return Made(chance, chance.Between(3, 30), longest, Math.Max(Math.Max(1, 2 * most), chance.Between(1, 5)), least, most, 5);
    }

    /// <summary>An axis as long as a shop's graphics are, in millimetres.</summary>
    public static PanelInstance Large(int seed)
    {
        PanelChance chance = new(seed);
        int least = chance.Between(-5, 25), most = least + chance.Between(0, 30);
        return Made(chance, chance.Between(1500, 10_000), chance.Between(600, 3200), Math.Max(Math.Max(1, 2 * most), chance.Between(50, 200)), least, most, 200);
    }

    private static PanelInstance Made(PanelChance chance, int length, int most, int least, int overlapLeast, int overlapMost, int block)
    {
        int[] cost = new int[length];
        for (int blocks = chance.Between(0, 6); blocks > 0; blocks--)
        {
            int from = chance.Between(0, length - 1), to = Math.Min(length, from + chance.Between(1, block)), each = chance.Between(0, 3) == 0 ? -1 : chance.Between(1, 40);
            for (int i = from; i < to; i++)
                cost[i] = each < 0 || cost[i] < 0 ? -1 : cost[i] + each;
        }

        int kind = chance.Between(0, 3);
        least = Math.Min(least, length);
        int[] wanted = [.. Enumerable.Range(0, Math.Max(0, chance.Between(-3, 4))).Select(_ => chance.Between(0, length))];
        int[] given = kind == 3 ? Lengths(chance, length, Math.Min(most, length), least, overlapLeast, overlapMost) : [];
        return new(
            length, Math.Min(most, length), least, overlapLeast, overlapMost, kind, given, cost, wanted, chance.Between(0, Math.Max(1, block / 20)),
            wanted.Length > 0 && chance.Between(0, 4) == 0, chance.Between(0, 60));
    }

    // Lengths that can be met for most seeds: cut off one after the other, the rest as the last.
    private static int[] Lengths(PanelChance chance, int length, int most, int least, int overlapLeast, int overlapMost)
    {
        List<int> given = [];
        int covered = 0;
        while (length - covered > most && given.Count < 12)
        {
            int each = chance.Between(Math.Min(least, most), most);
            given.Add(each);
            covered += Math.Max(1, each - chance.Between(overlapLeast, overlapMost));
        }

        return [.. given, Math.Max(1, length - covered)];
    }
}
