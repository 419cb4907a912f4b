using Laydown.Plan.Week;

namespace Laydown.Shop.Week;

/// <summary>A run in the week, with the shop's clock.</summary>
/// <param name="RunId">The run.</param>
/// <param name="Title">What is in it.</param>
/// <param name="PressId">Its press.</param>
/// <param name="SetUpStart">When set-up begins.</param>
/// <param name="SetUpMinutes">Set-up after the run before it, min.</param>
/// <param name="Start">When printing begins.</param>
/// <param name="End">When it is printed.</param>
/// <param name="Ready">When work after the press is done.</param>
/// <param name="Due">The day it is due; it is late from the end of that day on.</param>
/// <param name="LateMinutes">Minutes late; 0 where it is not.</param>
/// <param name="Pinned">Whether somebody put it at a time.</param>
/// <param name="Frozen">Whether it begins so soon that planning leaves it where it stands.</param>
/// <param name="Why">Why it is late and what would save it; null where it is not.</param>
/// <param name="SetUpBecause">How the set-up adds up, min.</param>
public sealed record WeekRunView(
    string RunId, string Title, string PressId, DateTimeOffset SetUpStart, int SetUpMinutes, DateTimeOffset Start, DateTimeOffset End, DateTimeOffset Ready,
    DateOnly Due, int LateMinutes, bool Pinned, bool Frozen, WeekWhy? Why, string SetUpBecause)
{
    /// <summary>How the log corrected the time of its sheets; null where it stands as reckoned.</summary>
    public string? TimeWords { get; init; }

    /// <summary>When its sheets take two people and one works alone, and what would do instead; null where there are people enough.</summary>
    public string? CrewWords { get; init; }
}
