using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Boards;

/// <summary>A layout of boards as a problem of rectangles, and the way back.</summary>
/// <param name="Problem">Stocks: first the started sheets, then those to take from. Pieces: those of which copies are still to be placed.</param>
/// <param name="Boards">For each stock of the problem what it is.</param>
/// <param name="Started">For each stock the started sheet it stands for; null for a bare one.</param>
/// <param name="Types">All pieces.</param>
/// <param name="Index">For each piece of the problem which of all pieces it is.</param>
/// <param name="Rules">Rules.</param>
internal sealed record BoardFrame(
    RectProblem Problem, IReadOnlyList<BoardStock> Boards, IReadOnlyList<SheetLayout?> Started, IReadOnlyList<PieceType> Types, IReadOnlyList<int> Index,
    BoardRules Rules)
{
    internal static BoardFrame Of(IReadOnlyList<Piece> pieces, BoardRules rules, IReadOnlyList<SheetLayout> started)
    {
        IReadOnlyList<PieceType> types = PieceType.From(pieces, rules.GapMm);
        IReadOnlyList<SheetLayout> kept = [.. started.Where(s => s.Placements.Any(p => p.Locked))];
        int[] left = Left(types, kept);
        IReadOnlyList<BoardStock> own = rules.Stocks ?? [new("", rules.Sheet, null, 1, rules.EdgeMarginMm)];
        IReadOnlyList<BoardStock> bare = [.. own.Select(s => s.OnHand is int n ? s with { OnHand = Math.Max(0, n - kept.Where(k => k.StockId == s.Id).Sum(k => k.Repeats)) } : s)];
        IReadOnlyList<BoardStock> boards = [.. kept.Select(k => new BoardStock(k.StockId ?? "", k.Sheet, k.Repeats, 0, k.EdgeMarginMm, k.KeepOuts)), .. bare];
        int[] index = [.. Enumerable.Range(0, types.Count).Where(i => left[i] > 0)];
        int[] groups = Together.Groups([.. types.Select(t => t.Piece)]);
        bool priced = own.Any(s => s.Price > 0);
        RectStock StockOf(BoardStock board, int i) => Grown(
            board, rules.GapMm, i < kept.Count ? 0 : priced ? board.Price : board.Size.AreaM2, i < kept.Count ? kept[i].Placements.Where(p => p.Locked) : []);
        RectProblem problem = new(
            [.. boards.Select(StockOf)], [.. index.Select(i => new RectPiece(types[i].Piece.Id, types[i].W, types[i].H, left[i], types[i].MayTurn, groups[i]))],
            new(rules.Process, rules.MostStages, rules.FirstCutUpright, 0, Micro.Up(rules.OffcutLeastSideMm + rules.GapMm), rules.OffcutWorth));
        return new(problem, boards, [.. kept, .. bare.Select(_ => (SheetLayout?)null)], types, index, rules);
    }

    // What is still to be placed of each piece.
    private static int[] Left(IReadOnlyList<PieceType> types, IReadOnlyList<SheetLayout> kept)
    {
        int[] left = [.. types.Select(t => t.Piece.Quantity)];
        Dictionary<string, int> byId = types.ToDictionary(t => t.Piece.Id, t => t.Index, StringComparer.Ordinal);
        foreach (SheetLayout sheet in kept)
            foreach (Placement p in sheet.Placements.Where(p => p.Locked))
            {
                if (!byId.TryGetValue(p.PieceId, out int i) || (left[i] -= sheet.Repeats) < 0)
                    throw new ArgumentException(Invariant($"{p.PieceId}: found more copies locked than are wanted."), nameof(kept));
            }

        return left;
    }

    private static RectStock Grown(BoardStock board, double gap, double cost, IEnumerable<Placement> locked)
    {
        BoardArea area = BoardArea.Of(board.Size, board.EdgeMarginMm, gap);
        double m = board.EdgeMarginMm;

        // A piece keeps its gap to what is locked on both sides; what is kept out need only not be touched, and the gap before it is given away.
        IEnumerable<Box> outs = (board.KeepOuts ?? []).Select(k => Of(k, m, 0)).Concat(locked.Select(p => Of(p.Place, m, gap)));
        return new(board.Id, area.Width, area.Height, board.OnHand, cost, [.. outs.Where(b => b is { W: > 0, H: > 0 })]);
    }

    private static Box Of(RectMm place, double margin, double gap)
    {
        int x = Micro.Down(place.XMm - margin), y = Micro.Down(place.YMm - margin);
        return new(x, y, Micro.Up(place.RightMm - margin + gap) - x, Micro.Up(place.TopMm - margin + gap) - y);
    }
}
