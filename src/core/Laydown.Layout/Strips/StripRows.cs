namespace Laydown.Layout.Strips;

/// <summary>An order of copies, held as rows of bits: for each size, which places of the order have it, or at most it.</summary>
/// <remarks>The first copy of the order that fits a gap is then the lowest bit of a few rows laid over each other. Bit = place × ways + side.</remarks>
internal sealed class StripRows
{
    private readonly StripPieces pieces;
    private readonly int ways;
    private readonly int[] copyAt;
    private readonly int[] firstWay;
    private readonly ulong[] fits, exact, low, level;

    internal StripRows(StripPieces pieces)
    {
        this.pieces = pieces;
        ways = pieces.Ways;
        Words = ((pieces.Count * ways) + 63) / 64;
        copyAt = [.. Enumerable.Range(0, pieces.Count)];
        firstWay = new int[pieces.Count];
        fits = new ulong[pieces.Widths.Length * Words];
        exact = new ulong[pieces.Widths.Length * Words];
        low = new ulong[pieces.Heights.Length * Words];
        level = new ulong[pieces.Heights.Length * Words];
        Refill();
    }

    /// <summary>Words of a row.</summary>
    internal int Words { get; }

    /// <summary>Places whose width is at most that of a rank.</summary>
    internal ReadOnlySpan<ulong> Fits(int rank) => fits.AsSpan(rank * Words, Words);

    /// <summary>Places of exactly the width of a rank.</summary>
    internal ReadOnlySpan<ulong> Exact(int rank) => exact.AsSpan(rank * Words, Words);

    /// <summary>Places whose height is at most that of a rank.</summary>
    internal ReadOnlySpan<ulong> Low(int rank) => low.AsSpan(rank * Words, Words);

    /// <summary>Places of exactly the height of a rank.</summary>
    internal ReadOnlySpan<ulong> Level(int rank) => level.AsSpan(rank * Words, Words);

    /// <summary>The way of a copy that a bit stands for: copy × ways + way.</summary>
    internal int WayAt(int bit)
    {
        if (ways == 1)
            return copyAt[bit];

        int place = bit >> 1;
        return (copyAt[place] << 1) + ((bit & 1) ^ firstWay[place]);
    }

    /// <summary>The piece at a place of the order.</summary>
    internal int PieceAt(int place) => pieces.Piece[copyAt[place]];

    /// <summary>Sets every place's copy and the way it prefers.</summary>
    internal void Set(ReadOnlySpan<int> copies, ReadOnlySpan<int> preferred)
    {
        copies.CopyTo(copyAt);
        preferred.CopyTo(firstWay);
        Refill();
    }

    /// <summary>Writes every place's copy and the way it prefers.</summary>
    internal void Get(Span<int> copies, Span<int> preferred)
    {
        copyAt.CopyTo(copies);
        firstWay.CopyTo(preferred);
    }

    /// <summary>Changes two places with each other.</summary>
    internal void Swap(int one, int other)
    {
        for (int side = 0; side < ways; side++)
            Change((one * ways) + side, (other * ways) + side);
        (copyAt[one], copyAt[other]) = (copyAt[other], copyAt[one]);
        (firstWay[one], firstWay[other]) = (firstWay[other], firstWay[one]);
    }

    /// <summary>Prefers the other way of the copy at a place.</summary>
    internal void Turn(int place)
    {
        if (ways == 1)
            return;

        Change(place * 2, (place * 2) + 1);
        firstWay[place] ^= 1;
    }

    private void Change(int bit, int otherBit)
    {
        int way = WayAt(bit), other = WayAt(otherBit);
        Change(bit, otherBit, pieces.WidthRank[way], pieces.WidthRank[other], pieces.Widths.Length, fits, exact);
        Change(bit, otherBit, pieces.HeightRank[way], pieces.HeightRank[other], pieces.Heights.Length, low, level);
    }

    private void Change(int bit, int otherBit, int rank, int otherRank, int ranks, ulong[] upTo, ulong[] only)
    {
        if (rank == otherRank)
            return;

        (int word, int otherWord) = (bit >> 6, otherBit >> 6);
        (ulong mask, ulong otherMask) = (1UL << bit, 1UL << otherBit);
        int end = Math.Min(ranks, Math.Max(rank, otherRank));
        for (int row = Math.Min(rank, otherRank) * Words, last = end * Words; row < last; row += Words)
        {
            upTo[row + word] ^= mask;
            upTo[row + otherWord] ^= otherMask;
        }

        foreach (int r in (ReadOnlySpan<int>)[rank, otherRank])
            if (r < ranks)
            {
                only[(r * Words) + word] ^= mask;
                only[(r * Words) + otherWord] ^= otherMask;
            }
    }

    private void Refill()
    {
        Array.Clear(exact);
        Array.Clear(level);
        for (int bit = 0; bit < pieces.Count * ways; bit++)
        {
            int way = WayAt(bit);
            if (pieces.Width[way] == 0)
                continue;

            exact[(pieces.WidthRank[way] * Words) + (bit >> 6)] |= 1UL << bit;
            level[(pieces.HeightRank[way] * Words) + (bit >> 6)] |= 1UL << bit;
        }

        Sum(exact, fits);
        Sum(level, low);
    }

    private void Sum(ulong[] only, ulong[] upTo)
    {
        for (int i = 0; i < only.Length; i++)
            upTo[i] = only[i] | (i >= Words ? upTo[i - Words] : 0);
    }
}
