namespace Laydown.Layout.Strips;

/// <summary>The first strip: a few plain orders, each filled without a limit of height.</summary>
internal static class StripStart
{
    /// <summary>Copies for which only some orders are tried.</summary>
    private const int Many = 5000;

    /// <summary>The lowest of the plain strips; it lacks copies only where the limit stopped every order.</summary>
    /// <param name="pieces">What is wanted.</param>
    /// <param name="problem">Width of the strip.</param>
    /// <param name="limit">No strip goes higher.</param>
    /// <param name="stop">Ends the trials after the first.</param>
    internal static StripRecord Of(StripPieces pieces, StripProblem problem, int limit, CancellationToken stop)
    {
        StripRows rows = new(pieces);
        StripFill fill = new(pieces, problem, rows.Words);
        StripRecord? best = null;
        foreach (int[] order in Orders(pieces).Take(pieces.Count > Many ? 2 : int.MaxValue))
            foreach (int[] preferred in Preferences(pieces))
            {
                if (best is not null && stop.IsCancellationRequested)
                    return best;

                rows.Set(order, preferred);
                fill.Run(rows, limit, long.MaxValue);
                if (best is null || fill.Placed > best.Ways.Length || (fill.Placed == best.Ways.Length && fill.Top < best.Height))
                    best = Record(fill, order, preferred);
            }

        return best!;
    }

    private static StripRecord Record(StripFill fill, int[] order, int[] preferred) => new(
        fill.Top, order, preferred, fill.Ways[..fill.Placed], fill.Xs[..fill.Placed], fill.Ys[..fill.Placed]);

    private static IEnumerable<int[]> Orders(StripPieces pieces)
    {
        int[] copies = [.. Enumerable.Range(0, pieces.Count)];
        yield return [.. copies.OrderByDescending(Wide).ThenByDescending(High)];
        yield return [.. copies.OrderByDescending(c => (long)Wide(c) * High(c))];
        yield return [.. copies.OrderByDescending(High).ThenByDescending(Wide)];
        yield return [.. copies.OrderByDescending(c => (long)Wide(c) + High(c))];

        int Way(int copy) => pieces.Ways == 2 && pieces.Width[copy * 2] == 0 ? (copy * 2) + 1 : copy * pieces.Ways;
        int Wide(int copy) => pieces.Width[Way(copy)];
        int High(int copy) => pieces.Height[Way(copy)];
    }

    // As they come; lying on their long side; standing on their short side.
    private static IEnumerable<int[]> Preferences(StripPieces pieces)
    {
        yield return new int[pieces.Count];
        if (pieces.Ways == 1)
            yield break;

        yield return [.. Enumerable.Range(0, pieces.Count).Select(c => pieces.Width[(c * 2) + 1] > pieces.Width[c * 2] ? 1 : 0)];
        yield return [.. Enumerable.Range(0, pieces.Count).Select(c => pieces.Height[(c * 2) + 1] > pieces.Height[c * 2] ? 1 : 0)];
    }
}
