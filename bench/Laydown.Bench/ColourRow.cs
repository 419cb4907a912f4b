namespace Laydown.Bench;

/// <summary>One figure of the colour bench.</summary>
/// <param name="Set">Data set or print.</param>
/// <param name="What">What was measured.</param>
/// <param name="Count">How many colours.</param>
/// <param name="Mean">Mean ΔE00, or the value itself where there is one number only.</param>
/// <param name="P95">95th percentile; 99th where the row says so.</param>
/// <param name="Max">Largest.</param>
/// <param name="Seconds">Wall time of the step, s.</param>
/// <param name="CpuSeconds">Processor time of the step, s.</param>
internal sealed record ColourRow(string Set, string What, int Count, double Mean, double P95, double Max, double Seconds, double CpuSeconds);
