namespace Laydown.Shop.Press;

/// <summary>From when on a stock shall be ordered.</summary>
/// <param name="StockId">The stock.</param>
/// <param name="At">What must be free, or more is ordered: boards or blanks, of a roll metres; null where nobody watches.</param>
/// <param name="To">Up to how much is ordered then; null for the point itself.</param>
/// <param name="By">Who sets it.</param>
public sealed record ReorderWish(string StockId, int? At, int? To, string By = "operator");
