namespace Laydown.Bench;

/// <summary>The demo day, measured.</summary>
/// <param name="Bench">Which bench.</param>
/// <param name="Rounds">How often the day was done, each time in a fresh folder.</param>
/// <param name="Stations">Its stations; <c>demo</c> writes the world and is not part of the day.</param>
/// <param name="DayWallSeconds">The day without writing the world, s.</param>
/// <param name="DayCpuSeconds">The same in processor time, s.</param>
/// <param name="PeakMb">Most memory this process held, MiB; child processes are not counted.</param>
/// <param name="Runs">Runs made.</param>
/// <param name="Held">Items held back.</param>
/// <param name="Checksum">SHA-256 over the names and hashes of all files of all runs: equal results, equal checksum.</param>
internal sealed record SpineResult(
    string Bench,
    int Rounds,
    IReadOnlyList<StationResult> Stations,
    double DayWallSeconds,
    double DayCpuSeconds,
    double PeakMb,
    int Runs,
    int Held,
    string Checksum);
