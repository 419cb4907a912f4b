namespace Laydown.Shop.Week;

/// <summary>How far trying of other presses is.</summary>
/// <param name="RunId">The run that is planned anew.</param>
/// <param name="PressId">The press it is planned for; null while all of them are tried for it.</param>
/// <param name="Done">Tried before.</param>
/// <param name="All">To be tried in all.</param>
public sealed record WeekTrying(string RunId, string? PressId, int Done, int All);
