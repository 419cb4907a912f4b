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
        Refuse(rules);
        return Of(rules.Sheet, rules.EdgeMarginMm, rules.GapMm);
    }

    /// <summary>The area of a board of a size.</summary>
    internal static BoardArea Of(SizeMm size, double margin, double gap)
    {
        Bounds.Within(margin, 0, 10_000);
        Bounds.Within(size.WidthMm - (2 * margin), 1, 1_000_000, nameof(size));
        Bounds.Within(size.HeightMm - (2 * margin), 1, 1_000_000, nameof(size));
        return new(Micro.Down(size.WidthMm - (2 * margin)) + Micro.Up(gap), Micro.Down(size.HeightMm - (2 * margin)) + Micro.Up(gap));
    }

    /// <exception cref="ArgumentException">A rule is out of range, two stocks share an id, or there is none.</exception>
    internal static void Refuse(BoardRules rules)
    {
        Bounds.Within(rules.GapMm, 0, 1000, nameof(rules));
        Bounds.Within(rules.Iterations, 0, 10_000_000, nameof(rules));
        Bounds.Within(rules.OffcutLeastSideMm, 1, 100_000, nameof(rules));
        Bounds.Within(rules.OffcutWorth, 0, 1, nameof(rules));
        Bounds.Within(rules.MostStages, 0, 1000, nameof(rules));
        if (rules.Stocks is not { } stocks)
        {
            Of(rules.Sheet, rules.EdgeMarginMm, rules.GapMm);
            return;
        }

        if (stocks.Count == 0 || stocks.Select(s => s.Id).Distinct(StringComparer.Ordinal).Count() != stocks.Count)
            throw new ArgumentException("Stocks: found none, or one id twice; wanted at least one, each id once.", nameof(rules));
        foreach (BoardStock stock in stocks)
        {
            Of(stock.Size, stock.EdgeMarginMm, rules.GapMm);
            Bounds.Within(stock.Price, 0, 1e12, nameof(rules));
            Bounds.Within(stock.OnHand ?? 0, 0, 1_000_000_000, nameof(rules));
        }
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
