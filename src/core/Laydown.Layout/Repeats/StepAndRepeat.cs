using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Repeats;

/// <summary>One piece in even steps on sheets of its own.</summary>
/// <remarks>
/// The grid stands in the middle of the sheet both ways, so a sheet that is turned over, left to right or head to foot, brings every piece onto the
/// place of another: both faces are cut from one program, and lays change sides without a change of the picture.
/// </remarks>
public static class StepAndRepeat
{
    /// <summary>As many as fit on each board, upright or turned, whichever takes more; the last board takes the rest, row by row from the bottom.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="sheet">The board, mm.</param>
    /// <param name="marginMm">Unprintable margin on each side, mm.</param>
    /// <param name="wish">Steps.</param>
    /// <param name="bothFaces">Whether both faces are printed.</param>
    /// <returns>At most two layouts; the piece comes back as unplaced where not one fits, or where its bleed does not cover the register of two faces.</returns>
    public static LayoutResult OnBoards(Piece piece, SizeMm sheet, double marginMm, RepeatWish wish, bool bothFaces)
    {
        if (Refused(piece, wish, bothFaces) is { } refused)
            return new([], [refused]);
        StepGrid? best = Grids(piece, sheet.WidthMm - (2 * marginMm), sheet.HeightMm - (2 * marginMm), wish, bothFaces)
            .OrderByDescending(g => g.Count).FirstOrDefault(g => g.Count > 0);
        if (best is null)
            return new([], [TooLarge(piece, sheet, marginMm)]);

        int full = piece.Quantity / best.Count, rest = piece.Quantity % best.Count;
        List<SheetLayout> layouts = [];
        if (full > 0)
            layouts.Add(new(sheet, marginMm, best.Placed(piece, sheet, 1, best.Count), full, []));
        if (rest > 0)
            layouts.Add(new(sheet, marginMm, best.Placed(piece, sheet, (full * best.Count) + 1, rest), 1, []));
        return new(layouts, []);
    }

    /// <summary>Rows along a roll, upright or turned, whichever is shorter.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="widthMm">Width of the roll, mm.</param>
    /// <param name="lengthMm">Length that is left of it, mm.</param>
    /// <param name="marginMm">Unprintable margin on each side, mm.</param>
    /// <param name="leadMm">Bare roll before and after, mm.</param>
    /// <param name="wish">Steps.</param>
    /// <returns>One layout; the piece comes back as unplaced where it is wider than the roll or the roll too short.</returns>
    public static LayoutResult OnRoll(Piece piece, double widthMm, double lengthMm, double marginMm, double leadMm, RepeatWish wish)
    {
        if (Refused(piece, wish, bothFaces: false) is { } refused)
            return new([], [refused]);
        List<(StepGrid Grid, double Length)> fitting = [];
        foreach (StepGrid grid in Grids(piece, widthMm - (2 * marginMm), 1_000_000, wish, bothFaces: false).Where(g => g.Across > 0))
        {
            int rows = (piece.Quantity + grid.Across - 1) / grid.Across;
            double length = (rows * grid.Step.HeightMm) - wish.GapUpMm + (2 * leadMm);
            if (length <= lengthMm)
                fitting.Add((grid with { Up = rows }, length));
        }

        if (fitting.Count == 0)
            return new([], [TooLarge(piece, new(widthMm, Math.Min(lengthMm, 1_000_000)), marginMm)]);
        (StepGrid best, double used) = fitting.MinBy(f => f.Length);
        SizeMm sheet = new(widthMm, used);
        return new([new(sheet, marginMm, best.Placed(piece, sheet, 1, piece.Quantity), 1, [])], []);
    }

    internal static IEnumerable<StepGrid> Grids(Piece piece, double width, double height, RepeatWish wish, bool bothFaces)
    {
        double least = bothFaces ? 2 * wish.RegisterMm : 0, across = Math.Max(wish.GapAcrossMm, least), up = Math.Max(wish.GapUpMm, least);
        foreach (bool turned in new[] { false, true })
        {
            if (turned && !piece.MayTurn)
                continue;
            SizeMm size = turned ? piece.Printed.Turned() : piece.Printed;
            SizeMm step = new(size.WidthMm + across, size.HeightMm + up);
            yield return new(Fits(width + across, step.WidthMm), Fits(height + up, step.HeightMm), size, step, turned);
        }
    }

    private static int Fits(double room, double step) => step <= 0 ? 0 : Math.Max(0, (int)Math.Floor((room / step) + 1e-9));

    internal static UnplacedPiece? Refused(Piece piece, RepeatWish wish, bool bothFaces)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(wish);
        Bounds.Within(wish.GapAcrossMm, 0, 1000, nameof(wish));
        Bounds.Within(wish.GapUpMm, 0, 1000, nameof(wish));
        Bounds.Within(wish.RegisterMm, 0, 50, nameof(wish));
        return bothFaces && piece.BleedMm < wish.RegisterMm
            ? new(piece.Id, piece.Quantity, Invariant($"bleed {piece.BleedMm:0.##} mm"), Invariant($"at least {wish.RegisterMm:0.##} mm, what the two faces may lie apart"))
            : null;
    }

    internal static UnplacedPiece TooLarge(Piece piece, SizeMm sheet, double marginMm) => new(
        piece.Id, piece.Quantity, Invariant($"{piece.Printed}, {(piece.MayTurn ? "may turn" : "may not turn")}"),
        Invariant($"pieces that fit on {sheet} with a margin of {marginMm:0.##} mm"));
}
