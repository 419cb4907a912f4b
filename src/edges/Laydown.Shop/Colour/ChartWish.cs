using Laydown.Colour.Charts;

namespace Laydown.Shop.Colour;

/// <summary>The chart wanted.</summary>
/// <param name="ConditionId">Print condition it is for: its colour inks, each up to full, and its total limit.</param>
/// <param name="StockId">Stock it is laid on; null for the first of the condition.</param>
/// <param name="Kind">What it is for.</param>
/// <param name="Way">How it is read.</param>
/// <param name="Seed">Seed of filling and order.</param>
public sealed record ChartWish(string ConditionId, string? StockId, ChartKind Kind, ReadingWay Way, int Seed);
