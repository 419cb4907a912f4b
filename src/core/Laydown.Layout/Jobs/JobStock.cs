using Laydown.Measures;

namespace Laydown.Layout.Jobs;

/// <summary>One size of board, an offcut of any shape, or a roll.</summary>
/// <param name="Id">Unique in its job.</param>
/// <param name="Kind">Board or roll.</param>
/// <param name="WidthMm">Width, mm.</param>
/// <param name="HeightMm">Height of a board, length on a roll, mm.</param>
/// <param name="Copies">How many there are; null for as many as needed.</param>
/// <param name="Price">Price of one board, or of one square metre of roll, any unit; 0 or more.</param>
/// <param name="EdgeMarginMm">What pieces keep from the edges, mm; 0 or more.</param>
/// <param name="Contour">Shape of an irregular offcut, within width and height; null for the rectangle.</param>
/// <param name="KeepOutsMm">Places where nothing may lie, such as clamps and damage, mm; null for none.</param>
/// <param name="PricePerMetre">Price of a running metre of roll, in place of <paramref name="Price"/>; 0 or more.</param>
public sealed record JobStock(
    string Id,
    JobStockKind Kind,
    double WidthMm,
    double HeightMm,
    int? Copies,
    double Price = 0,
    double EdgeMarginMm = 0,
    JobContour? Contour = null,
    IReadOnlyList<RectMm>? KeepOutsMm = null,
    double PricePerMetre = 0)
{
    /// <summary>Price of a square metre of roll.</summary>
    internal double RollPricePerM2 => Price + (PricePerMetre * 1000 / WidthMm);
}
