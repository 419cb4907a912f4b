namespace Laydown.Plan.Calendar;

/// <summary>Hours of one day on which work is different from the week's: an extra shift, or a press kept out of work.</summary>
/// <param name="Name">Why, for people, such as <c>Saturday before the fair</c> or <c>service of the carriage</c>.</param>
/// <param name="Day">The day on which it starts.</param>
/// <param name="Start">Local time at which it starts.</param>
/// <param name="End">Local time at which it ends.</param>
/// <param name="EndsNextDay">Whether it ends on the day after it starts.</param>
/// <param name="PressIds">The presses; null for all.</param>
/// <param name="Crew">People at the presses, 1 to 100; means nothing where work is kept out.</param>
public sealed record DayTime(
    string Name, DateOnly Day, TimeOnly Start, TimeOnly End, bool EndsNextDay = false, IReadOnlyList<string>? PressIds = null, int Crew = 1);
