namespace Laydown.Shop.Run;

/// <summary>What is at one place of a made sheet.</summary>
/// <param name="XMm">From the left edge of the sheet as it lies on the belt, mm.</param>
/// <param name="YMm">From its upper edge, mm.</param>
/// <param name="XPx">Column of the file, level 0.</param>
/// <param name="YPx">Row of the file.</param>
/// <param name="Level">Level the coverages are means of.</param>
/// <param name="IsDots">Whether codes are dots.</param>
/// <param name="Inks">Every ink, layer by layer.</param>
/// <param name="TotalPercent">All inks together, percent of one full laydown.</param>
/// <param name="TotalMlPerM2">All inks together, ml/m².</param>
/// <param name="Piece">What lies there; null on bare sheet.</param>
public sealed record SheetPlace(
    double XMm, double YMm, int XPx, int YPx, int Level, bool IsDots, IReadOnlyList<PlaneThere> Inks, double TotalPercent, double TotalMlPerM2, PieceThere? Piece);
