namespace Laydown.Plan.Log;

/// <summary>What was estimated and what it came to, once.</summary>
/// <param name="PressId">The press.</param>
/// <param name="ModeId">The mode.</param>
/// <param name="StockId">The stock.</param>
/// <param name="Estimate">As reckoned without the log, over 0.</param>
/// <param name="Actual">As it was, over 0, in the same unit.</param>
public sealed record EstimateCase(string PressId, string ModeId, string StockId, double Estimate, double Actual);
