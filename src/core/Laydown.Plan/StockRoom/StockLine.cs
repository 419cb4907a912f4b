namespace Laydown.Plan.StockRoom;

/// <summary>One stock in the room, all its lots of full size together.</summary>
/// <param name="StockId">The stock.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Unit">What is counted: boards, blanks or m.</param>
/// <param name="OnHand">What is there.</param>
/// <param name="Reserved">What of it is kept back for runs.</param>
/// <param name="Free">What is neither kept back nor missing.</param>
/// <param name="Wanted">What planned runs need beyond what is kept back for them.</param>
/// <param name="ReorderAt">Level from which more is ordered, or null.</param>
/// <param name="ToOrder">What to order: up to the level wanted, or, without one, what planned runs lack; 0 for nothing. Of a roll whole ones, m.</param>
/// <param name="Lots">Lots of it in the room.</param>
/// <param name="Rolls">Whole rolls to order, so that waiting runs can be kept back in turn, no piece parted; null of boards and blanks.</param>
/// <param name="OrderWords">Which rolls of the room are too short to count, and which run no roll holds; null where there is nothing to tell.</param>
/// <param name="OrderTo">Up to how much is ordered then, or null.</param>
/// <param name="SetBy">Who set the point in the shop; null where it is that of the stock's file.</param>
public sealed record StockLine(
    string StockId, string Name, string Unit, decimal OnHand, decimal Reserved, decimal Free, decimal Wanted, int? ReorderAt, decimal ToOrder, int Lots,
    int? Rolls = null, string? OrderWords = null, int? OrderTo = null, string? SetBy = null)
{
    /// <summary>Whether what is left for further work is at the point of ordering or under it.</summary>
    public bool IsLow => OnHand - Reserved - Wanted <= ReorderAt;
}
