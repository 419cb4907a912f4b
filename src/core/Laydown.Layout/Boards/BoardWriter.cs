using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Boards;

/// <summary>Turns layouts of rectangles back into sheets in millimetres.</summary>
internal static class BoardWriter
{
    internal static LayoutResult Write(BoardFrame frame, RectLayout layout)
    {
        CopyNumbers numbers = new(frame);
        List<SheetLayout> sheets = [];

        // Started sheets that took no piece more are sheets too.
        int[] used = new int[frame.Boards.Count];
        foreach (RectSheet sheet in layout.Sheets)
            used[sheet.Stock] += sheet.Repeats;
        IEnumerable<RectSheet> untouched = Enumerable.Range(0, frame.Boards.Count)
            .Where(s => frame.Started[s] is { } k && used[s] < k.Repeats).Select(s => new RectSheet(s, frame.Started[s]!.Repeats - used[s], [], []));
        foreach (RectSheet sheet in Merged(layout.Sheets).Concat(untouched).OrderBy(s => frame.Started[s.Stock] is null).ThenBy(s => Due(frame, s)).ThenByDescending(s => s.Spots.Sum(p => p.Place.Area)))
            sheets.Add(Sheet(frame, sheet, numbers));
        IEnumerable<UnplacedPiece> unplaced = layout.Missing.Select((n, i) => (Piece: frame.Types[frame.Index[i]], Copies: n)).Where(x => x.Copies > 0)
            .Select(x => Unplaced(frame, x.Piece, x.Copies));
        return new(sheets, [.. unplaced]);
    }

    /// <summary>A piece on its sheet, in mm.</summary>
    internal static Placement Put(Spot spot, Piece piece, double marginXMm, double marginYMm, int copy)
    {
        SizeMm size = spot.Turned ? piece.Printed.Turned() : piece.Printed;
        RectMm place = new(marginXMm + Micro.Mm(spot.Place.X), marginYMm + Micro.Mm(spot.Place.Y), size.WidthMm, size.HeightMm);
        return new(piece.Id, copy, place, spot.Turned, piece.Part);
    }

    /// <summary>A piece no board takes.</summary>
    internal static UnplacedPiece TooLarge(Piece piece, int copies, BoardRules rules)
    {
        IEnumerable<BoardStock> boards = rules.Stocks ?? [new("", rules.Sheet, null, 0, rules.EdgeMarginMm)];
        string sizes = string.Join(" or ", boards.Select(b => Invariant($"{b.Size.WidthMm - (2 * b.EdgeMarginMm):0.##} × {b.Size.HeightMm - (2 * b.EdgeMarginMm):0.##} mm")));
        string margins = string.Join(" or ", boards.Select(b => Invariant($"{b.EdgeMarginMm:0.##}")).Distinct(StringComparer.Ordinal));
        return new(
            piece.Id, copies, Invariant($"{piece.Printed}{(piece.MayTurn ? ", may turn" : ", may not turn")}"),
            Invariant($"at most {sizes}, the board less {margins} mm on each side"));
    }

    // A sheet waits for nothing but the work that is due first on it.
    private static DateOnly Due(BoardFrame frame, RectSheet sheet) =>
        sheet.Spots.Select(s => frame.Types[frame.Index[s.Piece]].Piece.Due ?? DateOnly.MaxValue).DefaultIfEmpty(DateOnly.MaxValue).Min();

    // Sheets that carry the same picture are one layout, repeated.
    internal static IEnumerable<RectSheet> Merged(IReadOnlyList<RectSheet> sheets) =>
        sheets.GroupBy(s => (s.Stock, Picture: string.Join(';', s.Spots.OrderBy(p => p.Place.Y).ThenBy(p => p.Place.X)
                .Select(p => Invariant($"{p.Piece},{p.Place.X},{p.Place.Y},{p.Turned}")))))
            .Select(g => g.First() with { Repeats = g.Sum(s => s.Repeats) });

    private static UnplacedPiece Unplaced(BoardFrame frame, PieceType type, int copies) =>
        frame.Problem.Stocks.Where((_, s) => frame.Started[s] is null).Any(s => type.Fits(s.Width, s.Height))
            ? new(type.Piece.Id, copies, Invariant($"no board left for {type.Piece.Printed}"), "more boards, or boards without places kept out")
            : TooLarge(type.Piece, copies, frame.Rules);

    private static SheetLayout Sheet(BoardFrame frame, RectSheet sheet, CopyNumbers numbers)
    {
        BoardStock board = frame.Boards[sheet.Stock];
        IEnumerable<Placement> locked = frame.Started[sheet.Stock]?.Placements.Where(p => p.Locked) ?? [];
        IEnumerable<Placement> placed = sheet.Spots.OrderBy(s => s.Place.Y).ThenBy(s => s.Place.X).Select(s =>
        {
            int piece = frame.Index[s.Piece];
            return Put(new(piece, s.Place, s.Turned), frame.Types[piece].Piece, board.EdgeMarginMm, board.EdgeMarginMm, numbers.Next(piece));
        });
        SheetLayout written = new(
            board.Size, board.EdgeMarginMm, [.. locked, .. placed], sheet.Repeats, [.. sheet.Offcuts.Select(o => Offcut(o, frame, sheet.Stock))],
            StockId: board.Id.Length == 0 ? null : board.Id, KeepOuts: board.KeepOuts is { Count: > 0 } outs ? outs : null);
        foreach (RectSpot spot in sheet.Spots)
            numbers.Skip(frame.Index[spot.Piece], sheet.Repeats - 1);
        return written;
    }

    // As it comes off the board: the margin goes with it where it lies at an edge, the kerf is lost elsewhere.
    private static RectMm Offcut(Box bare, BoardFrame frame, int stock)
    {
        (BoardStock board, RectStock grown, double gap) = (frame.Boards[stock], frame.Problem.Stocks[stock], frame.Rules.GapMm);
        double m = board.EdgeMarginMm;
        double left = bare.X == 0 ? 0 : m + Micro.Mm(bare.X), low = bare.Y == 0 ? 0 : m + Micro.Mm(bare.Y);
        double right = bare.Right == grown.Width ? board.Size.WidthMm : m + Micro.Mm(bare.Right) - gap;
        double top = bare.Top == grown.Height ? board.Size.HeightMm : m + Micro.Mm(bare.Top) - gap;
        return new(left, low, right - left, top - low);
    }
}
