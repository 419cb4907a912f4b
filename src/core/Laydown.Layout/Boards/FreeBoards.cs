using Laydown.Layout.FreePacking;
using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Boards;

/// <summary>Boards that are cut free, filled by the search for free cutting.</summary>
internal static class FreeBoards
{
    /// <summary>A try of the search changes a few boards only: so many are about the work of one whole order.</summary>
    private const long TriesPerIteration = 20;

    internal static IReadOnlyList<FilledSheet> Best(
        IReadOnlyList<PieceType> types, BoardArea area, BoardRules rules, CancellationToken cancellation)
    {
        RectProblem problem = new(
            [new("board", area.Width, area.Height, null, 1, [])],
            [.. types.Select(t => new RectPiece(t.Piece.Id, t.W, t.H, t.Piece.Quantity, t.MayTurn))],
            new(rules.Process, OffcutLeastSide: Micro.Up(rules.OffcutLeastSideMm + rules.GapMm)));
        RectLayout layout = FreeSearch.Solve(problem, new(rules.Seed, rules.Iterations * TriesPerIteration), null, cancellation);
        cancellation.ThrowIfCancellationRequested();
        return [.. layout.Sheets.Select(s =>
            new FilledSheet([.. s.Spots.Select(p => new Spot(p.Piece, p.Place, p.Turned))], new KeptRests(s.Offcuts), s.Repeats))];
    }
}
