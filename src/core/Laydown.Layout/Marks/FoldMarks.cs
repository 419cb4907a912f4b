using Laydown.Measures;

namespace Laydown.Layout.Marks;

/// <summary>Marks in the allowance of hems and pockets, which is folded under: at folds, at the stitch lines of pockets, at eyelets.</summary>
internal static class FoldMarks
{
    private const double FromEdgeMm = 1.5;

    /// <summary>Adds them.</summary>
    internal static void Add(MarkedPiece piece, FreeRoom room)
    {
        foreach (PieceEdge edge in (ReadOnlySpan<PieceEdge>)[PieceEdge.Bottom, PieceEdge.Top, PieceEdge.Left, PieceEdge.Right])
        {
            double wide = piece.Allowance.Of(edge);
            if (wide < 4)
                continue;
            bool level = edge is PieceEdge.Bottom or PieceEdge.Top;
            foreach (PointMm eyelet in piece.Eyelets.Where(e => IsNearest(e, piece.Trim, edge)))
                Line(piece, room, edge, MarkKind.Eyelet, level ? eyelet.XMm : eyelet.YMm);

            // The folds of the edges beside this one end here.
            (double low, double high) = level ? (piece.Trim.XMm, piece.Trim.RightMm) : (piece.Trim.YMm, piece.Trim.TopMm);
            (PieceEdge first, PieceEdge last) = level ? (PieceEdge.Left, PieceEdge.Right) : (PieceEdge.Bottom, PieceEdge.Top);
            Ends(piece, room, edge, first, low, -1);
            Ends(piece, room, edge, last, high, 1);
        }
    }

    private static void Ends(MarkedPiece piece, FreeRoom room, PieceEdge edge, PieceEdge beside, double at, int outward)
    {
        if (piece.Allowance.Of(beside) > 0)
            Line(piece, room, edge, MarkKind.Fold, at);
        if (piece.Pockets.Of(beside) > 0)
            Line(piece, room, edge, MarkKind.Stitch, at + (outward * piece.Pockets.Of(beside)));
    }

    // Across the allowance, clear of the finished piece and of the cut.
    private static void Line(MarkedPiece piece, FreeRoom room, PieceEdge edge, MarkKind kind, double at)
    {
        double wide = piece.Allowance.Of(edge), length = wide - (2 * FromEdgeMm), half = (piece.Wish.LineMm / 2) + CutMarks.GroundMm;
        bool level = edge is PieceEdge.Bottom or PieceEdge.Top;
        double from = edge switch
        {
            PieceEdge.Bottom => piece.Trim.YMm - wide,
            PieceEdge.Top => piece.Trim.TopMm,
            PieceEdge.Left => piece.Trim.XMm - wide,
            _ => piece.Trim.RightMm,
        } + FromEdgeMm;

        // Eyelets are told from folds by their length.
        if (kind == MarkKind.Eyelet)
        {
            double shorter = Math.Min(8, length);
            from = edge is PieceEdge.Bottom or PieceEdge.Left ? from + length - shorter : from;
            length = shorter;
        }

        RectMm box = level ? new(at - half, from, 2 * half, length) : new(from, at - half, length, 2 * half);
        if (!room.TryAdd(new(kind, piece.Placement.PieceId, piece.Placement.Copy, box, piece.Wish.LineMm, level, ""), withinOwn: true))
            room.Miss(Invariant($"{piece.Placement.PieceId}, copy {piece.Placement.Copy}: a {kind.ToString().ToLowerInvariant()} mark"));
    }

    private static bool IsNearest(PointMm place, RectMm trim, PieceEdge edge)
    {
        double left = place.XMm - trim.XMm, right = trim.RightMm - place.XMm, low = place.YMm - trim.YMm, high = trim.TopMm - place.YMm;
        double own = edge switch { PieceEdge.Left => left, PieceEdge.Right => right, PieceEdge.Bottom => low, _ => high };
        return own <= Math.Min(Math.Min(left, right), Math.Min(low, high)) + 1e-6;
    }
}
