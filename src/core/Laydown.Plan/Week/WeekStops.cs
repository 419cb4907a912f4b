namespace Laydown.Plan.Week;

/// <summary>Windows of a press that no run goes across.</summary>
internal sealed class WeekStops
{
    private readonly int[] starts;
    private readonly int[] ends;
    private readonly int longest;

    internal WeekStops(WeekPress press)
    {
        WeekWindow[] windows = [.. (press.Windows ?? []).Where(w => !w.MayPause).OrderBy(w => w.Start)];
        (starts, ends) = ([.. windows.Select(w => w.Start)], [.. windows.Select(w => w.End)]);
        int last = press.Open.Count == 0 ? 0 : press.Open[^1].End;
        longest = Enumerable.Range(0, starts.Length + 1)
            .Select(i => (From: i == 0 ? 0 : ends[i - 1], To: i == starts.Length ? Math.Max(last, i == 0 ? 0 : ends[i - 1]) : starts[i]))
            .Max(gap => press.Open.Sum(s => Math.Max(0, Math.Min(s.End, gap.To) - Math.Max(s.Start, gap.From))));
    }

    /// <summary>Where a run would go across a window, the end of that window; −1 where it goes across none, or could never be printed otherwise.</summary>
    internal int Past(int setUpStart, int end, int minutes)
    {
        if (starts.Length == 0 || minutes > longest)
            return -1;
        for (int i = 0; i < starts.Length && starts[i] < end; i++)
        {
            if (setUpStart < starts[i])
                return ends[i];
        }

        return -1;
    }
}
