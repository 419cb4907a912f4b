namespace Laydown.Plan.Week;

/// <summary>Runs after the press: when each comes to its benches, waits there and is done.</summary>
/// <remarks>
/// Wherever a place of a bench is free and worked, the run due first of those that wait is taken; of those due together the weightier, then the one named first. Work that a shift's end cuts
/// goes on at the same place in the next. No place stands idle while a run waits for it. Printed runs go before the first planned one comes.
/// </remarks>
internal sealed class WeekQueue
{
    /// <summary>The end of a run that stands in no order.</summary>
    internal const int Absent = int.MinValue;

    private const int IdBits = 20, Before = int.MaxValue / 2;

    private readonly (int Bench, int Minutes, bool Unattended)[][] steps;
    private readonly WeekTimes finishing;
    private readonly bool finishingAlways;
    private readonly WeekTimes[][] places;
    private readonly int[] due;
    private readonly int[] weight;
    private readonly int[] jobOfRank;
    private readonly int[] rank;

    // What a walk through the queue changes; set anew by each.
    private readonly int[][] free;
    private readonly WeekHeap[] waiting;
    private readonly WeekHeap events;
    private readonly int[] lookAt;
    private readonly int[] step;
    private readonly int[] come;

    internal WeekQueue(WeekProblem problem)
    {
        IReadOnlyList<WeekBench> benches = problem.Benches ?? [];
        Printed = problem.Printed ?? [];
        Dictionary<string, int> bench = benches.Select((b, i) => (b.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        (int, int, bool)[] Steps(IReadOnlyList<WeekStep> of) => [.. of.Select(s => (s.BenchId is null ? -1 : bench[s.BenchId], s.Minutes, s.Unattended))];
        steps = [.. problem.Runs.Select(r => Steps(r.Steps)), .. Printed.Select(p => Steps(p.Steps))];
        due = [.. problem.Runs.Select(r => r.Due), .. Printed.Select(p => p.Due)];
        weight = [.. problem.Runs.Select(r => r.Weight), .. Printed.Select(p => p.Weight)];
        (finishing, finishingAlways) = (new(problem.FinishingOpen), problem.FinishingOpen.Count == 0);
        places = [.. benches.Select(b => b.Places.Select(p => new WeekTimes(p)).ToArray())];
        jobOfRank = [.. Enumerable.Range(0, due.Length).OrderBy(j => due[j]).ThenByDescending(j => weight[j]).ThenBy(j => j)];
        rank = new int[due.Length];
        for (int i = 0; i < jobOfRank.Length; i++)
            rank[jobOfRank[i]] = i;
        HasBenches = steps.Any(s => s.Any(x => x.Bench >= 0));
        (free, waiting) = ([.. places.Select(p => new int[p.Length])], [.. places.Select(_ => new WeekHeap(64))]);
        (events, lookAt, step, come) = (new(due.Length + places.Length), new int[places.Length], new int[due.Length], new int[due.Length]);
        Ready = new int[due.Length];
    }

    /// <summary>Whether any step is done at a bench.</summary>
    internal bool HasBenches { get; }

    /// <summary>Runs that are printed already.</summary>
    internal IReadOnlyList<WeekPrinted> Printed { get; }

    /// <summary>When each run, then each printed one, is ready; as the last walk found it.</summary>
    internal int[] Ready { get; }

    /// <summary>Told of each visit, by run, bench, place, step, start and end; null where nobody asks.</summary>
    internal Action<int, int, int, int, int, int>? Told { get; set; }

    /// <summary>When a run printed at a time would be ready if every bench had a place free for it: never later than it is.</summary>
    internal int AtBest(int run, int end)
    {
        foreach ((int bench, int minutes, bool unattended) in steps[run])
            end = bench < 0 ? Off(end, minutes, unattended) : Soonest(places[bench], end, minutes, unattended);
        return end;
    }

    private static int Soonest(WeekTimes[] places, int come, int minutes, bool unattended)
    {
        int soonest = int.MaxValue;
        foreach (WeekTimes place in places)
            soonest = Math.Min(soonest, At(place, place.Next(come), minutes, unattended));
        return soonest;
    }

    /// <summary>Lets every run come from its press and go over its benches.</summary>
    /// <param name="ends">When each run is printed; <see cref="Absent"/> for one that stands in no order.</param>
    /// <param name="atBest">When each would be ready at best.</param>
    /// <param name="most">Where the cost is over this, the walk ends.</param>
    /// <returns>What waiting at benches costs beyond that; of printed runs all their lateness.</returns>
    internal long Walk(int[] ends, int[] atBest, long most)
    {
        Begin(ends);
        long cost = 0;
        while (events.Count > 0 && cost <= most)
        {
            long key = events.Take();
            int time = (int)(key >> IdBits) - Before, id = (int)(key & ((1 << IdBits) - 1));
            if (id >= due.Length)
                Look(id - due.Length, time);
            else if (Comes(id, time))
                cost += (long)weight[id] * (Math.Max(0, Ready[id] - due[id]) - (id < atBest.Length ? Math.Max(0, atBest[id] - due[id]) : 0));
        }

        return cost;
    }

    private void Begin(int[] ends)
    {
        events.Clear();
        Array.Clear(step);
        Array.Fill(lookAt, int.MaxValue);
        for (int b = 0; b < free.Length; b++)
        {
            Array.Fill(free[b], int.MinValue / 4);
            waiting[b].Clear();
        }

        for (int job = 0; job < due.Length; job++)
        {
            int end = job < ends.Length ? ends[job] : Printed[job - ends.Length].End;
            if (end != Absent)
                Add(end, job);
        }
    }

    private void Add(int time, int id) => events.Add(((long)(time + Before) << IdBits) | (uint)id);

    // A run comes from the press or a bench; true where all its steps are done.
    private bool Comes(int job, int time)
    {
        while (step[job] < steps[job].Length)
        {
            (int bench, int minutes, bool unattended) = steps[job][step[job]];
            if (bench >= 0)
            {
                come[job] = time;
                waiting[bench].Add(rank[job]);
                LookAt(bench, time);
                return false;
            }

            step[job]++;
            int end = Off(time, minutes, unattended);
            if (end > time)
            {
                Add(end, job);
                return false;
            }
        }

        Ready[job] = time;
        return true;
    }

    private void LookAt(int bench, int time)
    {
        if (time >= lookAt[bench])
            return;
        lookAt[bench] = time;
        Add(time, due.Length + bench);
    }

    // Gives runs that wait to the places that are free and worked, and looks again when the next one is.
    private void Look(int bench, int time)
    {
        if (time != lookAt[bench])
            return;
        lookAt[bench] = int.MaxValue;
        WeekTimes[] of = places[bench];
        while (waiting[bench].Count > 0)
        {
            int place = 0, start = int.MaxValue;
            for (int p = 0; p < of.Length; p++)
            {
                int at = of[p].Next(Math.Max(time, free[bench][p]));
                if (at < start)
                    (place, start) = (p, at);
            }

            if (start > time)
            {
                LookAt(bench, start);
                return;
            }

            int job = jobOfRank[waiting[bench].Take()];
            (_, int minutes, bool unattended) = steps[job][step[job]];
            int end = At(of[place], start, minutes, unattended);
            free[bench][place] = end;
            Told?.Invoke(job, bench, place, step[job], start, end);
            step[job]++;
            Add(end, job);
        }
    }

    /// <summary>When a place of a bench is worked.</summary>
    internal WeekTimes PlaceOf(int bench, int place) => places[bench][place];

    /// <summary>When a run came to the bench it is at; for whom visits are told to.</summary>
    internal int CameAt(int job) => come[job];

    private static int At(WeekTimes place, int start, int minutes, bool unattended) => unattended ? start + minutes : place.After(start, minutes);

    private int Off(int time, int minutes, bool unattended) => unattended || finishingAlways ? time + minutes : finishing.After(time, minutes);
}
