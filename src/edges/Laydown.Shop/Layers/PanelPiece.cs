namespace Laydown.Shop.Layers;

/// <summary>A piece outside any order.</summary>
/// <param name="StockId">The sheet.</param>
/// <param name="ConditionId">The print condition.</param>
/// <param name="WidthMm">Finished width, mm.</param>
/// <param name="HeightMm">Finished height, mm.</param>
/// <param name="BleedMm">Bleed on each side, mm.</param>
/// <param name="SeenThroughSheet">Whether it is looked at through the sheet.</param>
/// <param name="WhitePercent">Strength of the white, percent of full laydown, over 0 to 200.</param>
public sealed record PanelPiece(
    string StockId, string ConditionId, double WidthMm, double HeightMm, double BleedMm, bool SeenThroughSheet, double WhitePercent);
