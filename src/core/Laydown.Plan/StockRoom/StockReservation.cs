namespace Laydown.Plan.StockRoom;

/// <summary>What of a lot is kept back for a run.</summary>
/// <param name="RunId">The run.</param>
/// <param name="Quantity">Boards or blanks, whole; of a roll metres.</param>
public sealed record StockReservation(string RunId, decimal Quantity);
