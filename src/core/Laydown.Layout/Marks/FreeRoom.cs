using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Marks;

/// <summary>What of a sheet is still free for marks.</summary>
internal sealed class FreeRoom
{
    private readonly RectMm printable;
    private readonly List<RectMm> finished;
    private readonly List<(RectMm Place, string Piece, int Copy)> printed;
    private readonly List<SheetMark> marks = [];
    private readonly List<string> leftOut = [];

    internal FreeRoom(SheetLayout sheet, IReadOnlyList<MarkedPiece> pieces)
    {
        printable = new RectMm(0, 0, sheet.Sheet.WidthMm, sheet.Sheet.HeightMm).Grown(-sheet.EdgeMarginMm);
        finished = [.. pieces.Select(p => p.Trim)];
        printed = [.. sheet.Placements.Select(p => (p.Place, p.PieceId, p.Copy))];
    }

    internal IReadOnlyList<SheetMark> Marks => marks;

    internal IReadOnlyList<string> LeftOut => leftOut;

    /// <summary>Adds a mark where its box is free.</summary>
    /// <param name="mark">The mark.</param>
    /// <param name="withinOwn">Whether it may lie on the printed rectangle of its own piece, beyond the finished one.</param>
    internal bool TryAdd(SheetMark mark, bool withinOwn = false)
    {
        bool free = IsFree(mark, withinOwn);
        if (free)
            marks.Add(mark);
        return free;
    }

    /// <summary>Whether a mark's box is free.</summary>
    internal bool IsFree(SheetMark mark, bool withinOwn) => printable.Holds(mark.Box, 1e-3)
            && !finished.Any(f => f.Overlaps(mark.Box, 1e-3))
            && !printed.Any(p => p.Place.Overlaps(mark.Box, 1e-3) && !(withinOwn && p.Piece == mark.PieceId && p.Copy == mark.Copy))
            && !marks.Any(m => m.Box.Overlaps(mark.Box, 1e-3));

    /// <summary>Tells of a mark that found no room.</summary>
    internal void Miss(string what) => leftOut.Add(what);
}
