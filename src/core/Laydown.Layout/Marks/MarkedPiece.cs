using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Marks;

/// <summary>A piece on a sheet with what its marks need, mm from the sheet's lower left corner.</summary>
/// <param name="Placement">Where it lies.</param>
/// <param name="Trim">The finished piece, or the part of it that a panel shows.</param>
/// <param name="Allowance">Width beyond the finished piece that is folded under, at the edges as they lie on the sheet.</param>
/// <param name="Pockets">Of these widths, how far from the fold a pocket is stitched; 0 for hems.</param>
/// <param name="Eyelets">Places of eyelets.</param>
/// <param name="LowSide">Which edge on the sheet is the picture's lower edge: labels go there first.</param>
/// <param name="Label">Words that name it.</param>
/// <param name="Code">What its code says.</param>
/// <param name="Wish">Which marks are wanted.</param>
public sealed record MarkedPiece(
    Placement Placement, RectMm Trim, EdgeRoom Allowance, EdgeRoom Pockets, IReadOnlyList<PointMm> Eyelets, PieceEdge LowSide, string Label, string Code, MarkWish Wish);
