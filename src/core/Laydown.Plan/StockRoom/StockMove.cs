namespace Laydown.Plan.StockRoom;

/// <summary>One thing done in the stock room.</summary>
/// <param name="Kind">What.</param>
/// <param name="LotId">The lot.</param>
/// <param name="Quantity">How much: boards or blanks, whole; of a roll metres; 0 where a lot is only put elsewhere.</param>
/// <param name="At">When.</param>
/// <param name="By">Who, in their own words.</param>
/// <param name="RunId">The run, or null.</param>
/// <param name="Why">Why, such as <c>corner broken</c>; or null.</param>
/// <param name="Lot">The lot as it comes in, where it is new; its count and reservations are ignored.</param>
/// <param name="Place">The place, where it is put elsewhere.</param>
/// <param name="LogEntry">Number of the entry of the log that is its cause; null where it was done by hand.</param>
public sealed record StockMove(
    StockMoveKind Kind, string LotId, decimal Quantity, DateTimeOffset At, string By, string? RunId = null, string? Why = null, StockLot? Lot = null, string? Place = null,
    long? LogEntry = null);
