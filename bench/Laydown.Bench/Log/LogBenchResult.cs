namespace Laydown.Bench.Log;

/// <summary>A year of log, opened page by page over HTTP as a browser does.</summary>
/// <param name="Bench">Which bench.</param>
/// <param name="Entries">Entries of the log.</param>
/// <param name="RunsDone">Runs done among them.</param>
/// <param name="WriteSeconds">Time to write them in one transaction, s.</param>
/// <param name="FileMb">Length of the store, MiB.</param>
/// <param name="Rows">The pages, opened again and again in one process.</param>
/// <param name="Fresh">Pages as the first request of a fresh process.</param>
/// <param name="CpuSeconds">Processor time of the program while it opened the rows, s.</param>
/// <param name="Checksum">SHA-256 over numbers and times of the entries of the pages read: equal results, equal checksum.</param>
internal sealed record LogBenchResult(
    string Bench, int Entries, int RunsDone, double WriteSeconds, double FileMb, IReadOnlyList<LogBenchRow> Rows, IReadOnlyList<FreshRow> Fresh, double CpuSeconds, string Checksum);
