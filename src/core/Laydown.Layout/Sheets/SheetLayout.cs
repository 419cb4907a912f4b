using Laydown.Measures;

namespace Laydown.Layout.Sheets;

/// <summary>Pieces on one sheet, printed once or several times over.</summary>
/// <param name="Sheet">Size of the sheet, or of the length of roll used, mm.</param>
/// <param name="EdgeMarginMm">Unprintable margin on each side, mm.</param>
/// <param name="Placements">Where the pieces lie.</param>
/// <param name="Repeats">How many sheets carry exactly this picture; copies are numbered on the first.</param>
/// <param name="Offcuts">Usable rectangles left over, mm on the sheet.</param>
/// <param name="CutsAcrossMm">On a roll, where it is cut across from edge to edge between two sections, mm from its start, ascending; else null.</param>
/// <param name="Outlines">Contours of pieces that were laid out by them; null where all were laid out by their rectangles.</param>
/// <param name="StockId">Which size or offcut the sheet is, where there were several to take from; else null.</param>
/// <param name="KeepOuts">Places of the sheet where nothing may lie, such as clamps and damage, mm on the sheet; null for none.</param>
public sealed record SheetLayout(
    SizeMm Sheet, double EdgeMarginMm, IReadOnlyList<Placement> Placements, int Repeats, IReadOnlyList<RectMm> Offcuts,
    IReadOnlyList<double>? CutsAcrossMm = null, IReadOnlyList<PieceOutline>? Outlines = null,
    string? StockId = null, IReadOnlyList<RectMm>? KeepOuts = null)
{
    /// <summary>How its two printed faces belong together; null where one is printed, and in layouts made before this was kept.</summary>
    public SheetFaces? Faces { get; init; }

    /// <summary>Share of the sheet under pieces, percent.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double FillPercent => Sheet.AreaM2 <= 0 ? 0 : 100 * Placements.Sum(p => OutlineOf(p.PieceId)?.AreaMm2 / 1e6 ?? p.Place.Size.AreaM2) / Sheet.AreaM2;

    /// <summary>The contour of a piece, where it was laid out by one.</summary>
    public PieceOutline? OutlineOf(string pieceId) => Outlines?.FirstOrDefault(o => string.Equals(o.PieceId, pieceId, StringComparison.Ordinal));
}
