namespace Laydown.Plan.Calendar;

/// <summary>A window in which a press is looked after and not worked, once or every week.</summary>
/// <remarks>Local times. It belongs to the day it starts on; on holidays it holds, too. No run goes across it but where its sheets may stay on the belt meanwhile.</remarks>
/// <param name="What">What is done, such as <c>carriage cleaned and greased</c>.</param>
/// <param name="PressId">The press.</param>
/// <param name="Start">Local time at which it starts, whole minutes.</param>
/// <param name="End">Local time at which it ends.</param>
/// <param name="Day">The day of a window that comes once; null where it comes every week.</param>
/// <param name="Days">Days of the week on which it comes, each once; null where it comes once.</param>
/// <param name="By">Who does it; null where nobody is named.</param>
/// <param name="EndsNextDay">Whether it ends on the day after it starts.</param>
/// <param name="RunsMayPause">Whether a run may stand over it and go on after.</param>
public sealed record PressMaintenance(
    string What, string PressId, TimeOnly Start, TimeOnly End, DateOnly? Day = null, IReadOnlyList<DayOfWeek>? Days = null, string? By = null,
    bool EndsNextDay = false, bool RunsMayPause = false)
{
    /// <summary>Whether it starts on a day.</summary>
    public bool StartsOn(DateOnly day) => Day is { } once ? once == day : Days?.Contains(day.DayOfWeek) == true;
}
