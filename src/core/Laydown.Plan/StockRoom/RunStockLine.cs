namespace Laydown.Plan.StockRoom;

/// <summary>What a run needs of one stock.</summary>
/// <param name="RunId">The run.</param>
/// <param name="StockId">The stock.</param>
/// <param name="Name">Name of the stock for people.</param>
/// <param name="Unit">What is counted: boards, blanks or m.</param>
/// <param name="Needed">What the run takes.</param>
/// <param name="KeptBack">What of it is kept back for the run.</param>
/// <param name="Taken">What was taken for the run and not brought back.</param>
/// <param name="Used">What it used by the log, spoiled sheets and those beyond the plan too; null till it is done.</param>
public sealed record RunStockLine(string RunId, string StockId, string Name, string Unit, decimal Needed, decimal KeptBack, decimal Taken, decimal? Used = null)
{
    /// <summary>What was used by the log and could not be taken, since the room held no more; 0 for nothing.</summary>
    public decimal NotTaken => Math.Max(0, (Used ?? 0) - Taken);
}
