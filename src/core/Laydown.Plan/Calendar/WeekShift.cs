namespace Laydown.Plan.Calendar;

/// <summary>A shift that comes again every week, in the shop's local time.</summary>
/// <param name="Name">Name for people, such as <c>early</c>.</param>
/// <param name="Days">Days of the week on which it starts, each once, at least one.</param>
/// <param name="Start">Local time at which it starts, whole minutes.</param>
/// <param name="End">Local time at which it ends; after the start, or at most the start's time where <paramref name="EndsNextDay"/> is set.</param>
/// <param name="EndsNextDay">Whether it ends on the day after it starts.</param>
/// <param name="PressIds">Presses that are worked in it; null for all.</param>
/// <param name="Crew">People at the presses, 1 to 100.</param>
public sealed record WeekShift(
    string Name, IReadOnlyList<DayOfWeek> Days, TimeOnly Start, TimeOnly End, bool EndsNextDay = false, IReadOnlyList<string>? PressIds = null, int Crew = 1);
