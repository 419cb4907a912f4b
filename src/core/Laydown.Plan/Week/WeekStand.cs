using Laydown.Plan.Upkeep;

namespace Laydown.Plan.Week;

/// <summary>How long a press may stand, and what a longer stop needs.</summary>
/// <remarks>A stop over the limit of a line is got through the cheapest way, as <see cref="StopWays"/> decides: lines stored, or short runs that keep them alive.</remarks>
/// <param name="Lines">Lines with a limit.</param>
/// <param name="ShortRunMinutes">A short run that keeps the lines alive, minutes; over 0.</param>
/// <param name="LastUsed">When the lines last moved ink, minutes since the start of the plan: 0 or less.</param>
/// <param name="ShortRunCents">Ink of a short run, cents.</param>
/// <param name="LabourCentsPerHour">An hour of work, cents.</param>
/// <param name="PressCentsPerHour">An hour of the press within open time, cents.</param>
/// <param name="VisitMinutes">What a visit outside open time is paid beyond the short run, minutes.</param>
public sealed record WeekStand(
    IReadOnlyList<WeekLine> Lines, int ShortRunMinutes, int LastUsed, long ShortRunCents = 0, long LabourCentsPerHour = 0, long PressCentsPerHour = 0, double VisitMinutes = 0)
{
    /// <summary>The same for deciding a stop.</summary>
    internal StopTerms Terms() => new(
        [.. Lines.Select(l => new StopLine(l.LimitMinutes, l.FillMinutes, l.BackMinutes, l.StoreCents))], ShortRunMinutes, ShortRunCents, new(LabourCentsPerHour), new(PressCentsPerHour), VisitMinutes);
}
