using Laydown.Press.Stocks;

namespace Laydown.Plan.StockRoom;

/// <summary>Boards, blanks or offcuts of one size at one place, or one roll.</summary>
/// <param name="Id">Short name, unique in the room, such as <c>L-0012</c>; printed on its label.</param>
/// <param name="StockId">The stock it is.</param>
/// <param name="Kind">How it comes.</param>
/// <param name="WidthMm">Width, mm.</param>
/// <param name="LengthMm">Length, mm; of a roll the length of a whole one.</param>
/// <param name="Place">Where it stands, such as <c>rack 2, shelf B</c>.</param>
/// <param name="OnHand">Boards or blanks, whole; of a roll metres; 0 or more.</param>
/// <param name="Reserved">What is kept back, each run once.</param>
/// <param name="Since">The day it came, or was cut.</param>
/// <param name="BornOf">The run an offcut was left over by; null for what was bought.</param>
/// <param name="SupplierLot">Number of the maker's lot, or null.</param>
public sealed record StockLot(
    string Id,
    string StockId,
    StockKind Kind,
    double WidthMm,
    double LengthMm,
    string Place,
    decimal OnHand,
    IReadOnlyList<StockReservation> Reserved,
    DateOnly Since,
    string? BornOf = null,
    string? SupplierLot = null)
{
    /// <summary>What is not kept back for a run; 0 where less was counted than is kept back.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public decimal Free => Math.Max(0, OnHand - Reserved.Sum(r => r.Quantity));

    /// <summary>What is kept back for runs but is not there, after a count.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public decimal Short => Math.Max(0, Reserved.Sum(r => r.Quantity) - OnHand);

    /// <summary>What is kept back for a run.</summary>
    public decimal ReservedFor(string runId) => Reserved.Where(r => string.Equals(r.RunId, runId, StringComparison.Ordinal)).Sum(r => r.Quantity);
}
