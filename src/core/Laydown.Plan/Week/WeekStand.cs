namespace Laydown.Plan.Week;

/// <summary>How long a press may stand, and what a longer stop needs.</summary>
/// <remarks>A stop over the limit of a line is split by one short run within open time where that brings both parts under the limits of all lines; else the lines over their limit are stored.</remarks>
/// <param name="Lines">Lines with a limit.</param>
/// <param name="ShortRunMinutes">A short run that keeps the lines alive, minutes; over 0.</param>
/// <param name="LastUsed">When the lines last moved ink, minutes since the start of the plan: 0 or less.</param>
public sealed record WeekStand(IReadOnlyList<WeekLine> Lines, int ShortRunMinutes, int LastUsed);
