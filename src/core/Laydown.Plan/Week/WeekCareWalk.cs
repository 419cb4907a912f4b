using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Laydown.Plan.Upkeep;

namespace Laydown.Plan.Week;

/// <summary>The care of one press along an order of runs: lays each run so that care is done in time, and what a long stop needs before and after it.</summary>
internal sealed class WeekCareWalk
{
    /// <summary>Care laid for one run at most; beyond it the plan is a guess.</summary>
    private const int Most = 500;

    /// <summary>The whole of an interval of use, and what rounding adds.</summary>
    private const double Full = 1 + 1e-9;

    private readonly WeekTimes times;
    private readonly WeekStand? stand;
    private readonly int[] minutes;
    private readonly int[] every;
    private readonly double[][] usesOf;
    private readonly double[]?[] adds;
    private readonly string pressId;
    private readonly IReadOnlyList<WeekRun> runs;
    private readonly int[] last;
    private readonly int[] timed;
    private readonly double[] used;
    private readonly bool[] since;
    private readonly IReadOnlyList<WeekCare> care;
    private readonly Func<int, int, int, int, (int SetUpStart, int Start, int End)> lay;
    private readonly int shortest;
    private readonly WeekStopDesk? stops;
    private readonly List<Kept> kept = [];
    private int quiet;

    /// <summary>The care of a press.</summary>
    /// <param name="press">The press.</param>
    /// <param name="times">When it is worked.</param>
    /// <param name="runs">The runs.</param>
    /// <param name="lay">Set-up start, start and end of a run, for a press free from a time on, with minutes of set-up, and minutes it stands for care added.</param>
    internal WeekCareWalk(WeekPress press, WeekTimes times, IReadOnlyList<WeekRun> runs, Func<int, int, int, int, (int SetUpStart, int Start, int End)> lay)
    {
        (this.times, care, stand, this.lay, pressId, this.runs) = (times, press.Care ?? [], press.Stand, lay, press.Id, runs);
        stops = stand is null ? null : new(stand, press.Open);
        shortest = stand?.Lines.Select(l => l.LimitMinutes).DefaultIfEmpty(int.MaxValue).Min() ?? int.MaxValue;
        (minutes, every) = ([.. care.Select(c => c.Minutes)], [.. care.Select(c => c.EveryMinutes)]);
        int fours = (care.Count + 3) / 4 * 4;
        usesOf = [.. runs.Select(r => (double[])[.. care.Select(c => r.Uses is { } u && u.TryGetValue(c.Id, out double share) ? share : 0), .. new double[fours - care.Count]])];
        adds = [.. care.Select(c => c.Adds is { Count: > 0 } a ? care.Select(o => o.Id != c.Id && a.TryGetValue(o.Id, out double share) ? share : 0).ToArray() : null)];
        (last, timed, used, since) = (new int[care.Count], new int[fours], new double[fours], new bool[care.Count]);
        Array.Fill(timed, int.MaxValue);
        Begin();
    }

    /// <summary>How often it was looked for care that is due, since the making of this.</summary>
    internal long Looks { get; private set; }

    /// <summary>Told of each piece of care; null where nobody asks.</summary>
    internal Action<WeekBlock>? Told { get; set; }

    /// <summary>Told of each long stop; null where nobody asks.</summary>
    internal Action<WeekStop>? ToldStop { get; set; }

    /// <summary>Begins at the first run.</summary>
    internal void Begin()
    {
        for (int c = 0; c < last.Length; c++)
            (last[c], timed[c], used[c], since[c]) = (care[c].Last, Timed(c, care[c].Last), care[c].Used, care[c].Last < 0 || care[c].Used > 0);
        quiet = stand?.LastUsed ?? 0;
    }

    /// <summary>Keeps how things stand, under a number; numbers come one after the other from 0.</summary>
    internal void Keep(int number)
    {
        if (number == kept.Count)
            kept.Add(new(new int[last.Length], new int[timed.Length], new double[used.Length], new bool[last.Length], 0));
        (int[] keptLast, int[] keptTimed, double[] keptUsed, bool[] keptSince, _) = kept[number];
        last.CopyTo(keptLast, 0);
        timed.CopyTo(keptTimed, 0);
        used.CopyTo(keptUsed, 0);
        since.CopyTo(keptSince, 0);
        kept[number] = kept[number] with { Quiet = quiet };
    }

    /// <summary>Goes back to how things stood.</summary>
    internal void Back(int number)
    {
        (int[] keptLast, int[] keptTimed, double[] keptUsed, bool[] keptSince, quiet) = kept[number];
        keptLast.CopyTo(last, 0);
        keptTimed.CopyTo(timed, 0);
        keptUsed.CopyTo(used, 0);
        keptSince.CopyTo(since, 0);
    }

    /// <summary>Whether things stand as they did.</summary>
    internal bool IsAs(int number) =>
        quiet == kept[number].Quiet && last.AsSpan().SequenceEqual(kept[number].Last)
        && MemoryMarshal.Cast<double, long>(used).SequenceEqual(MemoryMarshal.Cast<double, long>(kept[number].Used))
        && since.AsSpan().SequenceEqual(kept[number].Since);

    /// <summary>Lays a run after the ones before it.</summary>
    /// <param name="run">The run.</param>
    /// <param name="printing">Minutes it prints.</param>
    /// <param name="free">When the press is free.</param>
    /// <param name="setUp">Minutes of its set-up.</param>
    internal (int SetUpStart, int Start, int End) Lay(int run, int printing, int free, int setUp)
    {
        int paused = 0, stood = int.MinValue;
        (int SetUpStart, int Start, int End) fit = lay(run, free, setUp, 0);
        if (fit.SetUpStart - quiet > shortest)
            fit = AfterStop(fit, run, setUp, ref free);
        for (int i = 0; i < Most; i++)
        {
            (int c, int due, bool before) = First(run, printing, fit, paused);
            Looks++;
            if (c < 0)
                break;
            if (before)
            {
                (int start, int end) = Before(c, due, fit.SetUpStart, free);
                Done(c, start, end, -1, 0, due);
                free = end;
            }
            else
            {
                int resumes = times.OpensAt(due) > fit.SetUpStart ? times.OpensAt(due) : times.Next(due);
                int start = Math.Max(Math.Max(resumes, fit.Start), stood), end = times.After(start, minutes[c]);
                Done(c, start, end, run, usesOf[run][c] * Math.Max(0, times.Worked(fit.Start, start) - paused) / Math.Max(1, printing), due);
                (paused, stood) = (paused + minutes[c], end);
            }

            fit = lay(run, free, setUp, paused);
        }

        double[] more = usesOf[run];
        for (int c = 0; c < used.Length; c++)
            used[c] += more[c];
        Array.Fill(since, true);
        quiet = fit.End;
        return fit;
    }

    // When its time is up; never where time does not count.
    private int Timed(int c, int done) => every[c] > 0 ? done + every[c] : int.MaxValue;

    // When it is due, or sooner where that keeps the run from waiting; what is due within the run no sooner than on its day.
    private (int Start, int End) Before(int c, int due, int setUpStart, int free)
    {
        int at = Math.Max(free, Math.Min(due, setUpStart - minutes[c]));
        at = due > setUpStart ? Math.Max(at, times.OpensAt(setUpStart)) : at;
        (int start, _, int end) = times.Fit(at, 0, minutes[c], 0, false);

        // What cannot wait till somebody is there again is done before they go, but for a press that prints to the end or was looked after then already.
        return care[c].WhileIdle && start > due && times.LastFit(due, minutes[c]) is { } early && early >= free && early > last[c] ? (early, early + minutes[c]) : (start, end);
    }

    private void Done(int c, int start, int end, int run, double alreadyUsed, int due)
    {
        bool byUse = every[c] <= 0 || due < timed[c];
        (last[c], timed[c], used[c], since[c]) = (start, Timed(c, start), used[c] - care[c].Back(used[c] + alreadyUsed), false);
        if (adds[c] is { } added)
            for (int other = 0; other < added.Length; other++)
                used[other] += added[other];
        Told?.Invoke(new(pressId, care[c].What, start, end, run < 0 ? null : runs[run].Id, care[c].Id, due, byUse));
    }

    // The care that is due first before the run is over, when, and whether it is done before the run: that comes first, as it moves the run. −1 where none is.
    // What cannot be due is passed over four kinds at a time.
    private (int Care, int Due, bool Before) First(int run, int printing, (int SetUpStart, int Start, int End) fit, int paused)
    {
        (int first, int at, bool before) = (-1, fit.End, false);
        int opens = -1;
        double[] uses = usesOf[run];
        for (int four = 0; four < used.Length; four += 4)
        {
            Vector256<double> shares = Vector256.Create(used.AsSpan(four)) + Vector256.Create(uses.AsSpan(four));
            uint some = Vector256.GreaterThan(shares, Vector256.Create(Full)).ExtractMostSignificantBits()
                | Vector128.LessThan(Vector128.Create(timed.AsSpan(four)), Vector128.Create(fit.End)).ExtractMostSignificantBits();
            for (; some != 0; some &= some - 1)
            {
                int c = four + BitOperations.TrailingZeroCount(some), due = timed[c];
                if (used[c] + uses[c] > Full)
                    due = used[c] >= 1 ? 0 : Math.Min(due, times.After(fit.Start, paused + (int)((1 - used[c]) / uses[c] * printing)));
                if (due >= fit.End)
                    continue;

                if (opens < 0)
                    opens = times.OpensAt(fit.SetUpStart);

                // Where the press opens again within the run care is done there; a care done since the last run is no use once more.
                bool border = paused == 0 && (due <= fit.SetUpStart || (since[c] && times.OpensAt(due) <= opens));
                if ((border && !before) || (border == before && due < at))
                    (first, at, before) = (c, due, border);
            }
        }

        return (first, at, before);
    }

    // A stop longer than the lines may stand: short runs within it, or storage fluid before and ink again after, whichever costs less.
    private (int SetUpStart, int Start, int End) AfterStop((int SetUpStart, int Start, int End) fit, int run, int setUp, ref int free)
    {
        int from = quiet;
        IReadOnlyList<StopWay> ways = stops!.Ways(from, fit.SetUpStart);
        StopWay way = ways[0];
        ToldStop?.Invoke(new(pressId, from, fit.SetUpStart, [.. ways.Select(w => new WeekStopWay(w.Name, w.Cost.Cents, w.ShortRuns.Count))]));
        int fill = stops.FillMinutes(way), back = stops.BackMinutes(way), begin = WeekStopDesk.MinuteOf(way.BackAt);
        if (fill > 0 && from >= 0)
            Told?.Invoke(new(pressId, "Lines filled with storage fluid", from, from + fill, null));
        free = Math.Max(free, from + fill);
        foreach (ShortRun one in way.ShortRuns)
        {
            (int start, int end) = (WeekStopDesk.MinuteOf(one.At), WeekStopDesk.MinuteOf(one.End));
            Told?.Invoke(new(pressId, one.InShift ? "Short run that keeps the lines alive" : "Short run that keeps the lines alive: a visit outside the shifts", start, end, null));
            free = Math.Max(free, end);
        }

        if (back > 0)
        {
            begin = Math.Max(begin, free);
            Told?.Invoke(new(pressId, "Lines filled with ink again", begin, begin + back, null));
            free = begin + back;
        }

        return lay(run, free, setUp, 0);
    }

    private sealed record Kept(int[] Last, int[] Timed, double[] Used, bool[] Since, int Quiet);
}
