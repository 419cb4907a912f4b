namespace Laydown.Shop.Week;

/// <summary>What a change would make of the week; nothing was changed.</summary>
/// <param name="RunId">The run that would be put.</param>
/// <param name="SetUpStart">When its set-up would begin.</param>
/// <param name="Start">When it would begin: as soon after the time wanted as can be.</param>
/// <param name="End">When it would be printed.</param>
/// <param name="Ready">When work after the press would be done.</param>
/// <param name="LateMinutes">Minutes it would be late; 0 where it would not.</param>
/// <param name="Later">Other runs that would be late by more than now, the most first.</param>
/// <param name="Sooner">How many other runs would be late by less than now.</param>
/// <param name="LateRuns">How many runs would be late in all.</param>
/// <param name="LateRunsNow">How many are late now.</param>
public sealed record WeekTrial(
    string RunId, DateTimeOffset SetUpStart, DateTimeOffset Start, DateTimeOffset End, DateTimeOffset Ready, int LateMinutes, IReadOnlyList<WeekLater> Later, int Sooner,
    int LateRuns, int LateRunsNow);
