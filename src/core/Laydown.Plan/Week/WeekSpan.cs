namespace Laydown.Plan.Week;

/// <summary>A span of time, whole minutes since the start of the plan.</summary>
/// <param name="Start">First minute.</param>
/// <param name="End">The minute after the last; over the start.</param>
public sealed record WeekSpan(int Start, int End)
{
    /// <summary>Spans less what is closed within them, such as service windows; sorted.</summary>
    public static IReadOnlyList<WeekSpan> Without(IEnumerable<WeekSpan> open, IEnumerable<WeekSpan> closed)
    {
        IEnumerable<WeekSpan> left = open.Where(s => s.End > s.Start).OrderBy(s => s.Start);
        foreach (WeekSpan gap in closed)
            left = left.SelectMany(s => (WeekSpan[])[new(s.Start, Math.Min(s.End, gap.Start)), new(Math.Max(s.Start, gap.End), s.End)]).Where(s => s.End > s.Start);
        return [.. left.Distinct()];
    }
}
