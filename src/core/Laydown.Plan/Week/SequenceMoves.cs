namespace Laydown.Plan.Week;

/// <summary>Moves by chance: two jobs swapped, or a block of neighbours shifted; short blocks more often than long ones.</summary>
internal static class SequenceMoves
{
    /// <summary>Longest block that is shifted as a whole, jobs; on published instances longer ones gained nothing.</summary>
    private const int MostBlock = 13;

    private const int ShortBlock = 3;

    /// <summary>A move of an order of <paramref name="count"/> jobs, 2 or more.</summary>
    internal static SequenceMove Pick(WeekChance chance, int count)
    {
        int kind = chance.Below(8);
        return kind < 2 ? Swap(chance, count) : Shift(chance, count, kind < 5 ? ShortBlock : MostBlock);
    }

    private static SequenceMove Swap(WeekChance chance, int count)
    {
        int one = chance.Below(count), other = chance.Below(count - 1);
        if (other >= one)
            other++;
        (int first, int last) = one < other ? (one, other) : (other, one);
        return new(first, first + 1, last, last + 1);
    }

    private static SequenceMove Shift(WeekChance chance, int count, int most)
    {
        int block = 1 + chance.Below(Math.Min(most, count - 1)), from = chance.Below(count - block + 1), to = chance.Below(count - block);
        if (to >= from)
            to++;
        return to < from ? new(to, from, from, from + block) : new(from, from + block, from + block, to + block);
    }
}
