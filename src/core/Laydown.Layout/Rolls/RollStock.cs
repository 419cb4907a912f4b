namespace Laydown.Layout.Rolls;

/// <summary>A roll that pieces may be laid out on.</summary>
/// <param name="Id">Its id, such as the stock's.</param>
/// <param name="WidthMm">Width, mm.</param>
/// <param name="LengthMm">Length left on it, mm.</param>
/// <param name="PricePerM2">What a square metre costs, any unit; where all are 0 area counts.</param>
/// <param name="EdgeMarginMm">Unprintable margin on each side, mm; 0 or more.</param>
/// <param name="Rolls">How many such rolls there are; at least 1.</param>
public sealed record RollStock(string Id, double WidthMm, double LengthMm, double PricePerM2 = 0, double EdgeMarginMm = 0, int Rolls = 1);
