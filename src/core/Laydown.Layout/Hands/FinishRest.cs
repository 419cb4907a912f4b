using Laydown.Layout.Search;

namespace Laydown.Layout.Hands;

/// <summary>Lays out anew whatever is not locked, around what is.</summary>
public static class FinishRest
{
    /// <summary>The fewest sheets found, or the shortest roll; locked pieces stay on their sheets and at their places.</summary>
    /// <remarks>
    /// Sheets with locked pieces are filled first, then bare ones. Plain orders of packing by all rules come first, then a walk over orders until
    /// the count meets a lower bound, the iterations are used up or it is stopped; the first answer takes one packing. Pieces too large for the
    /// sheet stay without a place. Where a saw cuts and the locked pieces themselves come apart, so does the whole.
    /// </remarks>
    /// <param name="sheets">The layout so far.</param>
    /// <param name="rules">What it must keep to.</param>
    /// <param name="search">Seed and iterations.</param>
    /// <param name="better">Told every improved answer, one call at a time; null for nobody.</param>
    /// <param name="stop">Ends the search; what was found is returned.</param>
    /// <exception cref="ArgumentException">A piece is none of the rules', or the margins leave nothing of the sheet.</exception>
    public static IReadOnlyList<HandSheet> Solve(
        IReadOnlyList<HandSheet> sheets, HandRules rules, SearchRules search, Action<IReadOnlyList<HandSheet>>? better, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentNullException.ThrowIfNull(search);
        var table = FinishTable.Of(sheets, rules);
        return table.Types.Count == 0 ? table.Kept : new FinishSearch(table, search).Best(better, stop);
    }
}
