namespace Laydown.Plan.StockRoom;

/// <summary>Rolls to order.</summary>
/// <param name="Rolls">Whole rolls; 0 for none.</param>
/// <param name="Metres">Their length together, m.</param>
/// <param name="Words">What a number does not tell: rolls in the room that are too short to count, runs that no roll holds. Null where there is nothing to tell.</param>
internal sealed record RollOrder(int Rolls, decimal Metres, string? Words);
