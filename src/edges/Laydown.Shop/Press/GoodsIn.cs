namespace Laydown.Shop.Press;

/// <summary>Goods that come into the stock room.</summary>
/// <param name="StockId">The stock.</param>
/// <param name="Quantity">Boards or blanks, whole; of a roll metres.</param>
/// <param name="Place">Where they are put.</param>
/// <param name="By">Who takes them in.</param>
/// <param name="SupplierLot">Number of the maker's lot, or null.</param>
/// <param name="WidthMm">Width of a rest, mm; null for the stock's own.</param>
/// <param name="LengthMm">Length of a rest, mm; null for the stock's own.</param>
public sealed record GoodsIn(
    string StockId, decimal Quantity, string Place, string By = "operator", string? SupplierLot = null, double? WidthMm = null, double? LengthMm = null);
