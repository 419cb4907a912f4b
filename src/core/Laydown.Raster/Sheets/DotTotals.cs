using Laydown.Measures;

namespace Laydown.Raster.Sheets;

/// <summary>Dots counted by ink and by drop, for the whole and for each piece. Dots outside of pieces are bare by nature and counted in the whole alone.</summary>
/// <param name="inks">How many inks, 1 to 64.</param>
/// <param name="levels">Kinds of dot, the bare one included: 2 for one bit, 4 for two.</param>
public sealed class DotTotals(int inks, int levels)
{
    private readonly long[] whole = new long[Bounds.Within(inks, 1, 64) * Bounds.Within(levels, 2, 256)];
    private readonly SortedDictionary<int, long[]> pieces = [];

    /// <summary>How many inks.</summary>
    public int Inks => inks;

    /// <summary>Kinds of dot, the bare one included.</summary>
    public int Levels => levels;

    /// <summary>Pieces of the job that have been counted, by their number in the job.</summary>
    public IReadOnlyCollection<int> Pieces => pieces.Keys;

    /// <summary>Dots of one ink by level, bare ones first, over the whole.</summary>
    public ReadOnlySpan<long> Of(int ink) => whole.AsSpan(ink * levels, levels);

    /// <summary>Dots of one ink by level within a piece, bare ones first; all 0 where the piece was not met.</summary>
    public ReadOnlySpan<long> Of(int piece, int ink) => pieces.TryGetValue(piece, out long[]? counts) ? counts.AsSpan(ink * levels, levels) : new long[levels];

    /// <summary>Adds what was counted elsewhere.</summary>
    /// <exception cref="ArgumentException">It has other inks or levels.</exception>
    public void Add(DotTotals other)
    {
        if (other.Inks != inks || other.Levels != levels)
            throw new ArgumentException(Invariant($"Totals: found {other.Inks} inks of {other.Levels} levels; wanted {inks} of {levels}."), nameof(other));
        Add(whole, other.whole);
        foreach ((int piece, long[] counts) in other.pieces)
            Add(CountsOf(piece), counts);
    }

    /// <summary>Adds dots of one ink, by level, to the whole.</summary>
    public void Add(int ink, ReadOnlySpan<long> counts) => Add(whole.AsSpan(ink * levels, levels), counts);

    /// <summary>Adds dots of one ink, by level, to a piece.</summary>
    public void Add(int piece, int ink, ReadOnlySpan<long> counts) => Add(CountsOf(piece).AsSpan(ink * levels, levels), counts);

    internal void Clear()
    {
        Array.Clear(whole);
        pieces.Clear();
    }

    /// <summary>Where the dots of one ink are counted up, by level.</summary>
    internal Span<long> Whole(int ink) => whole.AsSpan(ink * levels, levels);

    /// <summary>Where the dots of one ink within a piece are counted up, by level.</summary>
    internal Span<long> Piece(int piece, int ink) => CountsOf(piece).AsSpan(ink * levels, levels);

    private long[] CountsOf(int piece)
    {
        if (!pieces.TryGetValue(piece, out long[]? counts))
            pieces[piece] = counts = new long[inks * levels];
        return counts;
    }

    private static void Add(Span<long> sums, ReadOnlySpan<long> counts)
    {
        for (int i = 0; i < sums.Length; i++)
            sums[i] += counts[i];
    }
}
