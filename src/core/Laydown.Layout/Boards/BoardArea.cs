using Laydown.Layout.Packing;
using Laydown.Measures;

namespace Laydown.Layout.Boards;

/// <summary>The printable part of a board as the packing sees it: grown by one gap, as the pieces are.</summary>
/// <param name="Width">Width, µm.</param>
/// <param name="Height">Height, µm.</param>
internal sealed record BoardArea(int Width, int Height)
{
    internal static BoardArea Of(BoardRules rules)
    {
        double margin = Bounds.Within(rules.EdgeMarginMm, 0, 10_000, nameof(rules));
        double gap = Bounds.Within(rules.GapMm, 0, 1000, nameof(rules));
        Bounds.Within(rules.Iterations, 0, 10_000_000, nameof(rules));
        Bounds.Within(rules.OffcutLeastSideMm, 1, 100_000, nameof(rules));
        Bounds.Within(rules.Sheet.WidthMm - (2 * margin), 1, 1_000_000, nameof(rules));
        Bounds.Within(rules.Sheet.HeightMm - (2 * margin), 1, 1_000_000, nameof(rules));
        return new(
            Micro.Down(rules.Sheet.WidthMm - (2 * margin)) + Micro.Up(gap), Micro.Down(rules.Sheet.HeightMm - (2 * margin)) + Micro.Up(gap));
    }

    /// <summary>Lower bound: total area, and pieces over half the board both ways, of which no two share a board.</summary>
    internal int LeastBoards(IReadOnlyList<PieceType> types)
    {
        Int128 pieces = 0;
        long alone = 0;
        foreach (PieceType t in types)
        {
            pieces += (Int128)t.Area * t.Piece.Quantity;
            bool upright = 2L * t.W > Width && 2L * t.H > Height;
            bool turned = 2L * t.H > Width && 2L * t.W > Height;
            if ((upright || t.H > Height || t.W > Width) && (!t.MayTurn || turned || t.H > Width || t.W > Height))
                alone += t.Piece.Quantity;
        }

        Int128 board = (Int128)Width * Height;
        return (int)Int128.Max((pieces + board - 1) / board, alone);
    }
}
