using Laydown.Layout.Packing;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Boards;

/// <summary>Lays rectangles out on boards of one size.</summary>
public static class BoardLayout
{
    /// <summary>The fewest boards found; of equal counts the one with fewest different pictures, then with the emptiest last board.</summary>
    /// <remarks>
    /// Whole micrometres inside. Several orders and rules of fitting, then a search over orders within <see cref="BoardRules.Iterations"/>;
    /// it ends early where the count meets a lower bound. Pieces too large for the board come back as unplaced.
    /// </remarks>
    /// <exception cref="ArgumentException">An id comes twice, a size is not over 0, a quantity is under 1, or the margins leave nothing of the board.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; nothing is kept.</exception>
    public static LayoutResult Solve(IReadOnlyList<Piece> pieces, BoardRules rules, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(rules);
        BoardArea area = BoardArea.Of(rules);
        IReadOnlyList<PieceType> all = PieceType.From(pieces, rules.GapMm);
        IReadOnlyList<UnplacedPiece> unplaced = [.. all.Where(t => !t.Fits(area.Width, area.Height)).Select(t => TooLarge(t.Piece, rules))];
        IReadOnlyList<PieceType> types = [.. all.Where(t => t.Fits(area.Width, area.Height)).Select((t, i) => t with { Index = i })];
        if (types.Count == 0)
            return new([], unplaced);

        IReadOnlyList<FilledSheet> sheets = rules.Process is CutProcess.Free
            ? FreeBoards.Best(types, area, rules, cancellation)
            : new BoardSearch(types, area, rules).Best(cancellation);
        return new(SheetWriter.Write(sheets, types, area, rules), unplaced);
    }

    /// <summary>The least number of boards any layout needs: by area, and by pieces that cannot share a board.</summary>
    /// <returns>0 where nothing fits.</returns>
    /// <exception cref="ArgumentException">As for <see cref="Solve"/>.</exception>
    public static int LeastBoards(IReadOnlyList<Piece> pieces, BoardRules rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        BoardArea area = BoardArea.Of(rules);
        return area.LeastBoards([.. PieceType.From(pieces, rules.GapMm).Where(t => t.Fits(area.Width, area.Height))]);
    }

    private static UnplacedPiece TooLarge(Piece piece, BoardRules rules)
    {
        double width = rules.Sheet.WidthMm - (2 * rules.EdgeMarginMm), height = rules.Sheet.HeightMm - (2 * rules.EdgeMarginMm);
        return new(
            piece.Id,
            piece.Quantity,
            Invariant($"{piece.Printed}{(piece.MayTurn ? ", may turn" : ", may not turn")}"),
            Invariant($"at most {width:0.##} × {height:0.##} mm, the board less {rules.EdgeMarginMm:0.##} mm on each side"));
    }
}
