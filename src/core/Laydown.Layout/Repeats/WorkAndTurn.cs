using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Repeats;

/// <summary>Fronts of a piece on one half of a sheet and its backs on the other, so that one file printed on both faces gives whole pieces.</summary>
/// <remarks>
/// The grid stands in the middle of the sheet and has an even count of places across the line about which the sheet is turned. Each back lies where its
/// front comes to lie when the sheet is turned over, with the head at the same edge of the piece: both are one place for the knife. Known in the
/// trade as work-and-turn (turned sideways) and work-and-tumble (head to foot). Common practice, no source.
/// </remarks>
public static class WorkAndTurn
{
    /// <summary>As many pairs as fit on each board, upright or turned, whichever takes more; the last board takes the rest, one more where the count is odd.</summary>
    /// <param name="piece">The piece; its quantity counts whole pieces, printed on both faces.</param>
    /// <param name="sheet">The board, mm.</param>
    /// <param name="marginMm">Unprintable margin on each side, mm.</param>
    /// <param name="wish">Steps.</param>
    /// <param name="faces">How the sheet is turned, and how far its faces may lie apart.</param>
    /// <returns>At most two layouts; the piece comes back as unplaced where no pair fits, or where its bleed does not cover the register.</returns>
    public static LayoutResult OnBoards(Piece piece, SizeMm sheet, double marginMm, RepeatWish wish, SheetFaces faces)
    {
        ArgumentNullException.ThrowIfNull(faces);
        ArgumentNullException.ThrowIfNull(wish);
        RepeatWish own = wish with { RegisterMm = faces.RegisterMm };
        if (StepAndRepeat.Refused(piece, own, bothFaces: true) is { } refused)
            return new([], [refused]);
        List<StepGrid> grids = [.. StepAndRepeat.Grids(piece, sheet.WidthMm - (2 * marginMm), sheet.HeightMm - (2 * marginMm), own, bothFaces: true)];
        StepGrid? best = grids.Select(g => Even(g, faces.Turn)).OrderByDescending(g => g.Count).FirstOrDefault(g => g.Count > 0);
        if (best is null)
            return new([], [NoPair(piece, sheet, marginMm, faces.Turn, grids.Max(g => g.Count))]);

        int full = piece.Quantity / best.Count, rest = piece.Quantity % best.Count;
        List<SheetLayout> layouts = [];
        if (full > 0)
            layouts.Add(Of(piece, sheet, marginMm, best, faces, 1, best.Count / 2, full));
        if (rest > 0)
            layouts.Add(Of(piece, sheet, marginMm, best, faces, (full * best.Count) + 1, (rest + 1) / 2, 1));
        return new(layouts, []);
    }

    private static SheetLayout Of(Piece piece, SizeMm sheet, double marginMm, StepGrid grid, SheetFaces faces, int firstCopy, int pairs, int repeats)
    {
        bool sideways = faces.Turn == SheetTurn.Sideways;
        List<Placement> all = [];
        foreach (Placement front in grid.Placed(piece, sheet, firstCopy, grid.Count).Where(p => IsFront(p.Place, sheet, sideways)).Take(pairs))
        {
            all.Add(front with { Copy = firstCopy + all.Count });
            all.Add(TurnedOver.Of(front, sheet, faces.Turn) with { Copy = firstCopy + all.Count });
        }

        return new(sheet, marginMm, all, repeats, []) { Faces = faces };
    }

    private static bool IsFront(RectMm place, SizeMm sheet, bool sideways) =>
        sideways ? place.XMm + (place.WidthMm / 2) < sheet.WidthMm / 2 : place.YMm + (place.HeightMm / 2) < sheet.HeightMm / 2;

    // A row on the line about which the sheet is turned would be front and back at once.
    private static StepGrid Even(StepGrid grid, SheetTurn turn) => turn == SheetTurn.Sideways
        ? grid with { Across = grid.Across - (grid.Across % 2) }
        : grid with { Up = grid.Up - (grid.Up % 2) };

    private static UnplacedPiece NoPair(Piece piece, SizeMm sheet, double marginMm, SheetTurn turn, int fits) => fits == 0
        ? StepAndRepeat.TooLarge(piece, sheet, marginMm)
        : new(piece.Id, piece.Quantity, Invariant($"{piece.Printed}, one {(turn == SheetTurn.Sideways ? "beside another" : "above another")} does not fit on {sheet}: the sheet cannot be turned onto itself"),
            "two side by side across the line of the turn, another edge to turn about, or sheetwise");
}
