using Laydown.Layout.FreePacking;
using Laydown.Layout.Guillotine;
using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Boards;

/// <summary>Lays rectangles out on boards of one or several sizes and on offcuts.</summary>
public static class BoardLayout
{
    /// <summary>Steps of each search that are about the work of packing one whole order, of which <see cref="BoardRules.Iterations"/> tells how many.</summary>
    private const long CutSteps = 50, FreeSteps = 20;

    /// <summary>The cheapest boards found; of equal cost the ones with the largest offcuts.</summary>
    /// <remarks>
    /// Whole micrometres inside. A search within <see cref="BoardRules.Iterations"/>; it ends early where the cost meets a lower bound.
    /// Where more than 8 copies of each piece are wanted on average, patterns of bands and columns repeated are sought too and the cheaper answer is
    /// kept. Copies over what is wanted fill the last board where a piece allows them.
    /// Pieces too large for every board, or that no board is left for, come back as unplaced.
    /// </remarks>
    /// <exception cref="ArgumentException">An id comes twice, a size is not over 0, a quantity is under 1, or the margins leave nothing of a board.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; nothing is kept.</exception>
    public static LayoutResult Solve(IReadOnlyList<Piece> pieces, BoardRules rules, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(rules);
        BoardArea.Refuse(rules);
        cancellation.ThrowIfCancellationRequested();

        LayoutResult result = Solve(pieces, rules, [], new SearchRules(rules.Seed, Steps(pieces, rules)), null, cancellation);
        cancellation.ThrowIfCancellationRequested();
        return result;
    }

    /// <summary>The same around what lies locked on sheets already, better while one looks.</summary>
    /// <remarks>Sheets with locked pieces are paid already and are filled first; where a saw cuts, its cuts go around the locked pieces.</remarks>
    /// <param name="pieces">All pieces, those that lie locked among them.</param>
    /// <param name="rules">Boards to take from; its seed and iterations are not looked at.</param>
    /// <param name="started">Sheets with locked pieces; whatever is not locked on them is laid out anew.</param>
    /// <param name="search">Seed, iterations, workers.</param>
    /// <param name="better">Told every improved answer, one call at a time; null for nobody.</param>
    /// <param name="stop">Ends the search; the best so far is returned.</param>
    /// <exception cref="ArgumentException">As for the other; or more of a piece are locked than wanted.</exception>
    public static LayoutResult Solve(
        IReadOnlyList<Piece> pieces, BoardRules rules, IReadOnlyList<SheetLayout> started, SearchRules search, Action<LayoutResult>? better,
        CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentNullException.ThrowIfNull(started);
        ArgumentNullException.ThrowIfNull(search);
        BoardArea.Refuse(rules);
        var frame = BoardFrame.Of(pieces, rules, started);
        if (frame.Problem.Pieces.Count == 0)
            return BoardWriter.Write(frame, new([], []));
        LayoutResult result = BoardWriter.Write(frame, Search(frame, search, better is null ? null : l => better(BoardWriter.Write(frame, l)), stop));
        return started.Count == 0 && !rules.OneLayout ? BoardOvers.Filled(result, pieces, rules, search, stop) : result;
    }

    /// <summary>The least number of boards any layout needs: by area, and by pieces that cannot share a board.</summary>
    /// <returns>0 where nothing fits. Where there are several sizes it tells of boards of <see cref="BoardRules.Sheet"/> alone.</returns>
    /// <exception cref="ArgumentException">As for <see cref="Solve(IReadOnlyList{Piece}, BoardRules, CancellationToken)"/>.</exception>
    public static int LeastBoards(IReadOnlyList<Piece> pieces, BoardRules rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        BoardArea area = BoardArea.Of(rules);
        return area.LeastBoards([.. PieceType.From(pieces, rules.GapMm).Where(t => t.Fits(area.Width, area.Height))]);
    }

    private static RectLayout Search(BoardFrame frame, SearchRules search, Action<RectLayout>? better, CancellationToken stop)
    {
        if (frame.Rules.OneLayout)
            return OneForAll.Solve(frame.Problem, search, better, stop);
        BoardBest best = new(frame.Problem, better);
        if (!BoardPatterns.Suit(frame))
            return Tree(frame, search, better, stop);
        BoardPatterns.Offer(frame, search, best, stop);
        if (!best.IsProven && !(stop.IsCancellationRequested && best.IsWhole) && BoardPatterns.TreeToo(frame))
            best.Offer(Tree(frame, search, best.Offer, stop));
        return best.Layout!;
    }

    private static RectLayout Tree(BoardFrame frame, SearchRules search, Action<RectLayout>? better, CancellationToken stop) =>
        frame.Rules.Process is CutProcess.Free
            ? FreeSearch.Solve(frame.Problem, search, better, stop)
            : GuillotineSearch.Solve(frame.Problem, search, better, stop);

    private static long Steps(IReadOnlyList<Piece> pieces, BoardRules rules)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        return Math.Max(rules.Iterations > 0 ? 1 : 0, (rules.Process is CutProcess.Free ? FreeSteps : CutSteps) * Orders.Steps(rules.Iterations, PieceType.From(pieces, rules.GapMm)));
    }
}
