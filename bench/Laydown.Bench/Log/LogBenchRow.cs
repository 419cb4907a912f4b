namespace Laydown.Bench.Log;

/// <summary>One page of the log, opened again and again.</summary>
/// <param name="Page">Its address, or what was read from the store.</param>
/// <param name="FirstMs">The first time, ms.</param>
/// <param name="MedianMs">Median of the others, ms.</param>
/// <param name="MostMs">Longest of the others, ms.</param>
/// <param name="Bytes">Length of the answer.</param>
internal sealed record LogBenchRow(string Page, double FirstMs, double MedianMs, double MostMs, int Bytes);
