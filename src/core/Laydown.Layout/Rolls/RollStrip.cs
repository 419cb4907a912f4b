using Laydown.Layout.Sheets;

namespace Laydown.Layout.Rolls;

/// <summary>What lies on one roll.</summary>
/// <param name="StockId">The roll.</param>
/// <param name="Layout">The pieces on it, and where it is cut across; y runs along the roll, lead-in and lead-out contained.</param>
/// <param name="Position">Which roll from the left, from 0.</param>
public sealed record RollStrip(string StockId, SheetLayout Layout, int Position = 0);
