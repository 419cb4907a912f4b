using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Boards;

/// <summary>Pre-cut blanks: one piece on each, printed to its edge.</summary>
public static class BlankLayout
{
    /// <summary>One layout for each piece, repeated for its quantity. Bleed that would fall beside the blank is left out of the picture.</summary>
    /// <param name="pieces">Pieces; the finished size of each must be that of the blank, as it lies or turned where that is allowed.</param>
    /// <param name="blank">Size of the blank, mm.</param>
    /// <param name="toleranceMm">What finished size and blank may differ, mm.</param>
    /// <returns>Layouts in the order of the pieces; pieces of another size come back as unplaced.</returns>
    public static LayoutResult Solve(IReadOnlyList<Piece> pieces, SizeMm blank, double toleranceMm)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        Bounds.Within(toleranceMm, 0, 100);
        List<SheetLayout> sheets = [];
        List<UnplacedPiece> unplaced = [];
        foreach (Piece piece in pieces)
        {
            SizeMm finished = new(piece.Printed.WidthMm - (2 * piece.BleedMm), piece.Printed.HeightMm - (2 * piece.BleedMm));
            if (Same(finished, blank, toleranceMm))
                sheets.Add(One(piece, blank, turned: false));
            else if (piece.MayTurn && Same(finished.Turned(), blank, toleranceMm))
                sheets.Add(One(piece, blank, turned: true));
            else
                unplaced.Add(new(piece.Id, piece.Quantity, Invariant($"finished size {finished}"), Invariant($"{blank}, the blank")));
        }

        return new(sheets, unplaced);
    }

    private static bool Same(SizeMm one, SizeMm other, double tolerance) =>
        Math.Abs(one.WidthMm - other.WidthMm) <= tolerance && Math.Abs(one.HeightMm - other.HeightMm) <= tolerance;

    private static SheetLayout One(Piece piece, SizeMm blank, bool turned)
    {
        // As much of the picture as the blank takes, from the middle of the one to the middle of the other.
        SizeMm lying = turned ? blank.Turned() : blank;
        SizeMm shown = new(Math.Min(lying.WidthMm, piece.Printed.WidthMm), Math.Min(lying.HeightMm, piece.Printed.HeightMm));
        RectMm part = Middle(piece.Printed, shown);
        RectMm place = Middle(blank, turned ? shown.Turned() : shown);
        return new(blank, 0, [new(piece.Id, 1, place, turned, shown == piece.Printed ? piece.Part : part)], piece.Quantity, []);
    }

    private static RectMm Middle(SizeMm whole, SizeMm part) =>
        new((whole.WidthMm - part.WidthMm) / 2, (whole.HeightMm - part.HeightMm) / 2, part.WidthMm, part.HeightMm);
}
