using Laydown.Measures;

namespace Laydown.Layout.Marks;

/// <summary>Two lines at each corner of a finished piece, outside what is printed of it.</summary>
internal static class CutMarks
{
    /// <summary>Bare ground on each side of a line, mm: own choice, enough for the eye on a dark ground.</summary>
    internal const double GroundMm = 0.8;

    /// <summary>Adds them; a line without room is tried at half and a quarter of its length.</summary>
    internal static void Add(MarkedPiece piece, FreeRoom room)
    {
        RectMm trim = piece.Trim, print = piece.Placement.Place;
        EdgeRoom fold = piece.Allowance;
        RectMm outer = new(trim.XMm - fold.LeftMm, trim.YMm - fold.BottomMm, trim.WidthMm + fold.LeftMm + fold.RightMm, trim.HeightMm + fold.BottomMm + fold.TopMm);
        int missed = 0;
        foreach (double x in (ReadOnlySpan<double>)[outer.XMm, outer.RightMm])
        {
            missed += Line(piece, room, upright: true, x, Math.Min(print.YMm, outer.YMm), down: true);
            missed += Line(piece, room, upright: true, x, Math.Max(print.TopMm, outer.TopMm), down: false);
        }

        foreach (double y in (ReadOnlySpan<double>)[outer.YMm, outer.TopMm])
        {
            missed += Line(piece, room, upright: false, y, Math.Min(print.XMm, outer.XMm), down: true);
            missed += Line(piece, room, upright: false, y, Math.Max(print.RightMm, outer.RightMm), down: false);
        }

        if (missed > 0)
            room.Miss(Invariant($"{piece.Placement.PieceId}, copy {piece.Placement.Copy}: {missed} of 8 cut marks"));
    }

    private static int Line(MarkedPiece piece, FreeRoom room, bool upright, double at, double from, bool down)
    {
        MarkWish wish = piece.Wish;
        double half = (wish.LineMm / 2) + GroundMm;
        for (double length = wish.CutMarkMm; length >= Math.Min(2, wish.CutMarkMm / 4); length /= 2)
        {
            double start = down ? from - wish.CutMarkOffMm - length : from + wish.CutMarkOffMm;
            RectMm box = upright ? new(at - half, start, 2 * half, length) : new(start, at - half, length, 2 * half);
            if (room.TryAdd(new(MarkKind.Cut, piece.Placement.PieceId, piece.Placement.Copy, box, wish.LineMm, upright, "")))
                return 0;
        }

        return 1;
    }
}
