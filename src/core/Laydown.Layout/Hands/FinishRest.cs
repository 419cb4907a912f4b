using Laydown.Layout.Search;

namespace Laydown.Layout.Hands;

/// <summary>Lays out anew whatever is not locked, around what is.</summary>
public static class FinishRest
{
    /// <summary>The fewest sheets found, or the shortest roll; locked pieces stay on their sheets and at their places.</summary>
    /// <remarks>
    /// Boards go through the searches that lay boards out in the first place: rectangles through that of rectangles begun with the locked pieces,
    /// contours through that of contours with the locked pieces kept out. Two things those cannot take, and a walk over orders of packing does:
    /// a roll, which they lay out only from its bare start, and locked pieces that break a rule among themselves or that no saw parts, on which
    /// nothing sound can be begun. There the locked pieces are taken as they are and the rest keeps every rule.
    /// Pieces too large for the sheet stay without a place. The search ends where a lower bound is met, the iterations are used up or it is stopped.
    /// </remarks>
    /// <param name="sheets">The layout so far.</param>
    /// <param name="rules">What it must keep to.</param>
    /// <param name="search">Seed and iterations.</param>
    /// <param name="better">Told every improved answer, one call at a time, the last of them the answer given; null for nobody.</param>
    /// <param name="stop">Ends the search; what was found is returned.</param>
    /// <exception cref="ArgumentException">A piece is none of the rules', or the margins leave nothing of the sheet.</exception>
    public static IReadOnlyList<HandSheet> Solve(
        IReadOnlyList<HandSheet> sheets, HandRules rules, SearchRules search, Action<IReadOnlyList<HandSheet>>? better, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentNullException.ThrowIfNull(search);
        IReadOnlyList<HandSheet> kept = Kept(sheets);
        string last = "";
        Action<IReadOnlyList<HandSheet>>? told = better is null ? null : Told;
        IReadOnlyList<HandSheet> done = BoardFinish.Takes(kept, rules) ? BoardFinish.Solve(kept, rules, search, told, stop)
            : rules is { Contours: not null, IsRoll: false } ? ContourFinish.Solve(kept, rules, search, told, stop)
            : Walked(sheets, rules, search, told, stop);

        // What is tidied at the very end is told too.
        if (better is not null && Text(done) != last)
            better(done);
        return done;

        void Told(IReadOnlyList<HandSheet> found)
        {
            last = Text(found);
            better!(found);
        }
    }

    /// <summary>The locked pieces alone, on the sheets that have some.</summary>
    internal static IReadOnlyList<HandSheet> Kept(IReadOnlyList<HandSheet> sheets) =>
        [.. sheets.Select(s => s with { Spots = [.. s.Spots.Where(p => p.Locked)] }).Where(s => s.Spots.Count > 0)];

    /// <summary>By the walk over orders of packing.</summary>
    internal static IReadOnlyList<HandSheet> Walked(
        IReadOnlyList<HandSheet> sheets, HandRules rules, SearchRules search, Action<IReadOnlyList<HandSheet>>? better, CancellationToken stop)
    {
        var table = FinishTable.Of(sheets, rules);
        return table.Types.Count == 0 ? table.Kept : new FinishSearch(table, search).Best(better, stop);
    }

    private static string Text(IReadOnlyList<HandSheet> sheets) => string.Join('\n', sheets.Select(s => Invariant($"{s.Repeats} {string.Join(' ', s.Spots)}")));
}
