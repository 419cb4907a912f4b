using Laydown.Measures;

namespace Laydown.Layout.Marks;

/// <summary>Code and words of a piece, side by side: in the allowance that is folded under where that is wide enough, else beside what is printed.</summary>
internal static class LabelMarks
{
    // Letters of equal width are about six tenths as wide as high.
    private const double LetterWide = 0.62, LineHigh = 1.6, GapMm = 2, OffMm = 1, LeastCodeMm = 10, LeastLetters = 10, StepMm = 3;

    /// <summary>Adds them at the picture's lower edge, else at another.</summary>
    internal static void Add(MarkedPiece piece, FreeRoom room)
    {
        PieceEdge[] edges = [piece.LowSide, PieceEdge.Bottom, PieceEdge.Top, PieceEdge.Right, PieceEdge.Left];
        foreach (PieceEdge edge in edges)
        {
            if (Folded(piece, room, edge) || Beside(piece, room, edge))
                return;
        }

        string what = (piece.Wish.Labels, piece.Wish.Codes) switch { (true, true) => "label and code", (true, _) => "label", _ => "code" };
        room.Miss(Invariant($"{piece.Placement.PieceId}, copy {piece.Placement.Copy}: {what}"));
    }

    private static bool Folded(MarkedPiece piece, FreeRoom room, PieceEdge edge)
    {
        double wide = piece.Allowance.Of(edge) - (2 * OffMm), code = Math.Min(piece.Wish.CodeMm, wide);
        if (wide < piece.Wish.LabelMm * LineHigh || (piece.Wish.Codes && code < LeastCodeMm))
            return false;
        RectMm trim = piece.Trim;
        double strip = Math.Max(piece.Wish.Codes ? code : 0, piece.Wish.Labels ? piece.Wish.LabelMm * LineHigh : 0);
        return Add(piece, room, edge, trim, OffMm, strip, code, withinOwn: true);
    }

    private static bool Beside(MarkedPiece piece, FreeRoom room, PieceEdge edge)
    {
        RectMm print = piece.Placement.Place;
        double beyond = edge switch
        {
            PieceEdge.Left => print.XMm - (piece.Trim.XMm - piece.Allowance.LeftMm),
            PieceEdge.Bottom => print.YMm - (piece.Trim.YMm - piece.Allowance.BottomMm),
            PieceEdge.Right => piece.Trim.RightMm + piece.Allowance.RightMm - print.RightMm,
            _ => piece.Trim.TopMm + piece.Allowance.TopMm - print.TopMm,
        };
        return Add(piece, room, edge, print, OffMm + Math.Max(0, beyond), piece.Wish.StripMm, piece.Wish.CodeMm, withinOwn: false);
    }

    // A strip along an edge of a rectangle, outside it: the code first, then the words. Corners keep clear of folds.
    private static bool Add(MarkedPiece piece, FreeRoom room, PieceEdge edge, RectMm beside, double off, double strip, double code, bool withinOwn)
    {
        bool level = edge is PieceEdge.Bottom or PieceEdge.Top;
        double along = level ? beside.WidthMm : beside.HeightMm;
        double at = edge switch
        {
            PieceEdge.Bottom => beside.YMm - off - strip,
            PieceEdge.Top => beside.TopMm + off,
            PieceEdge.Left => beside.XMm - off - strip,
            _ => beside.RightMm + off,
        };

        // The whole words where they fit, else shorter ones: the writer leaves the end out.
        double most = piece.Label.Length * LetterWide * piece.Wish.LabelMm, least = piece.Wish.Labels ? LeastLetters * LetterWide * piece.Wish.LabelMm : 0;
        foreach (double share in (ReadOnlySpan<double>)[1, 0.6, 0.35])
        {
            double words = piece.Wish.Labels ? Math.Min(most * share, along - (piece.Wish.Codes ? code + GapMm : 0)) : 0;
            if (words >= least && Fitted(piece, room, (level, level ? beside.XMm : beside.YMm, along, at), strip, code, words, withinOwn))
                return true;
        }

        return false;
    }

    // From the first end on, in steps, until both are free.
    private static bool Fitted(
        MarkedPiece piece, FreeRoom room, (bool Level, double First, double Along, double At) edge, double strip, double code, double words, bool withinOwn)
    {
        double length = (piece.Wish.Codes ? code : 0) + (piece.Wish.Labels && piece.Wish.Codes ? GapMm : 0) + words;
        for (double from = edge.First; from + length <= edge.First + edge.Along + 1e-6; from += StepMm)
        {
            SheetMark whole = new(MarkKind.Label, piece.Placement.PieceId, piece.Placement.Copy, Box(edge.Level, from, edge.At, length, strip), 0, !edge.Level, "");
            if (!room.IsFree(whole, withinOwn))
                continue;
            Put(piece, room, edge.Level, from, edge.At, strip, code, words, withinOwn);
            return true;
        }

        return false;
    }

    private static void Put(MarkedPiece piece, FreeRoom room, bool level, double from, double at, double strip, double code, double words, bool withinOwn)
    {
        (string id, int copy) = (piece.Placement.PieceId, piece.Placement.Copy);
        if (piece.Wish.Codes)
        {
            room.TryAdd(new(MarkKind.Code, id, copy, Box(level, from, at, code, code), 0, !level, piece.Code), withinOwn);
            from += code + GapMm;
        }

        double high = piece.Wish.LabelMm * LineHigh;
        if (piece.Wish.Labels)
            room.TryAdd(new(MarkKind.Label, id, copy, Box(level, from, at + ((strip - high) / 2), words, high), 0, !level, piece.Label), withinOwn);
    }

    private static RectMm Box(bool level, double from, double at, double length, double high) =>
        level ? new(from, at, length, high) : new(at, from, high, length);
}
