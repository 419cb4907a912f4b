namespace Laydown.Plan.StockRoom;

/// <summary>The room after moves, and the moves.</summary>
/// <param name="Lots">Lots that are new or changed.</param>
/// <param name="Moves">What was done, in order.</param>
public sealed record StockChange(IReadOnlyList<StockLot> Lots, IReadOnlyList<StockMove> Moves);
