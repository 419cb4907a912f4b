using Laydown.Measures;
using Laydown.Plan.Calendar;

namespace Laydown.Plan.Upkeep;

/// <summary>Decides what is done about a stop longer than the lines may stand; the week and upkeep both ask here, so that they decide the same.</summary>
/// <remarks>
/// The ways: all lines over their limit stored; and for each limit, lines with a shorter one stored and short runs that leave no gap over it. The cheapest comes first; of those that cost the same the one with fewer
/// visits outside the shifts, then with fewer lines stored. Limits and amounts are the press's own or common practice, no source.
/// </remarks>
public static class StopWays
{
    /// <summary>Every way through a stop, the cheapest first; none where no line stands longer than it may.</summary>
    /// <param name="terms">What it is decided by.</param>
    /// <param name="idle">The stop.</param>
    /// <param name="shifts">When the press is worked, from a day before the stop to a day after it; sorted, apart.</param>
    /// <param name="now">No short run begins before that.</param>
    public static IReadOnlyList<StopWay> Of(StopTerms terms, IdleSpan idle, IReadOnlyList<OpenSpan> shifts, DateTimeOffset now)
    {
        double minutes = (idle.End - idle.Start).TotalMinutes;
        int[] needing = [.. terms.Lines.Index().Where(l => minutes > l.Item.LimitMinutes).Select(l => l.Index)];
        if (needing.Length == 0)
            return [];
        List<StopWay> ways = [Way("Storage fluid", terms, idle, shifts, needing, [])];
        foreach (int limit in needing.Select(l => terms.Lines[l].LimitMinutes).Distinct().Order().Where(l => l > terms.ShortRunMinutes))
        {
            int[] stored = [.. needing.Where(l => terms.Lines[l].LimitMinutes < limit)];
            IReadOnlyList<ShortRun> runs = ShortRunTimes.Cheapest(idle, limit / 60.0, terms.ShortRunMinutes, shifts, (terms.ShortRun(true).Cents, terms.ShortRun(false).Cents));
            if (runs.All(r => r.At >= now))
                ways.Add(Way(stored.Length == 0 ? "Short runs" : "Short runs, other lines stored", terms, idle, shifts, stored, runs));
        }

        return [.. ways.OrderBy(w => w.Cost.Cents).ThenBy(w => w.ShortRuns.Count(r => !r.InShift)).ThenBy(w => w.Stored.Count)];
    }

    private static StopWay Way(string name, StopTerms terms, IdleSpan idle, IReadOnlyList<OpenSpan> shifts, int[] stored, IReadOnlyList<ShortRun> runs)
    {
        double fill = Math.Ceiling(stored.Sum(l => terms.Lines[l].FillMinutes) - 1e-9), back = Math.Ceiling(stored.Sum(l => terms.Lines[l].BackMinutes) - 1e-9);
        DateTimeOffset filled = idle.Start.AddMinutes(fill), backAt = BackAt(idle, shifts, filled, back), readyAt = idle.End;
        if (stored.Length > 0)
        {
            backAt = runs.Count > 0 && runs[^1].End > backAt ? runs[^1].End : backAt;
            readyAt = backAt.AddMinutes(back) > idle.End ? backAt.AddMinutes(back) : idle.End;
        }

        double inShifts = Overlap(shifts, idle.Start, filled) + Overlap(shifts, backAt, backAt.AddMinutes(back));
        Money storing = stored.Length == 0 ? default : new Money(stored.Sum(l => terms.Lines[l].StoreCents)) + terms.Labour(fill + back) + terms.Press(inShifts);
        return new(name, stored, runs, backAt, readyAt, inShifts, storing + Money.Sum(runs.Select(r => terms.ShortRun(r.InShift))));
    }

    // Back again before the next run where its shift has room for that; else from the start of that shift on, and the run waits.
    private static DateTimeOffset BackAt(IdleSpan idle, IReadOnlyList<OpenSpan> shifts, DateTimeOffset filled, double back)
    {
        DateTimeOffset at = idle.End.AddMinutes(-back), opens = shifts.FirstOrDefault(s => s.Start <= idle.End && idle.End < s.End)?.Start ?? idle.End;
        DateTimeOffset earliest = opens > filled ? opens : filled;
        return at >= earliest ? at : earliest < idle.End ? earliest : idle.End;
    }

    private static double Overlap(IReadOnlyList<OpenSpan> shifts, DateTimeOffset from, DateTimeOffset to) =>
        shifts.Sum(s => Math.Max(0, ((s.End < to ? s.End : to) - (s.Start > from ? s.Start : from)).TotalMinutes));
}
