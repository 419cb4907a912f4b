namespace Laydown.Plan.Week;

/// <summary>A problem by places: what orders of runs on presses cost.</summary>
internal sealed class WeekModel
{
    /// <summary>What a minute that a run put by hand waits beyond its start weighs.</summary>
    private const int HoldWeight = 1000;

    private readonly int[][] setUps;
    private readonly int[][] cents;
    private readonly int[] releases;
    private readonly int[] holdStart;
    private readonly int[] frozenStart;
    private readonly WeekQueue queue;
    private readonly int[] ends;
    private readonly int[] atBest;
    private readonly int[][] chainBefore;
    private readonly WeekStops[] stops;
    private readonly WeekCareWalk?[] care;

    /// <summary>The model of a problem.</summary>
    /// <param name="problem">The problem, without faults.</param>
    /// <param name="like">A model of a problem with the same runs, states and changes, whose set-ups are taken over; null to reckon them.</param>
    internal WeekModel(WeekProblem problem, WeekModel? like = null)
    {
        Problem = problem;
        Runs = [.. problem.Runs];
        Presses = problem.Presses.Count;
        Times = [.. problem.Presses.Select(p => new WeekTimes(p.Open))];
        stops = [.. problem.Presses.Select(p => new WeekStops(p))];
        care = [.. problem.Presses.Select((p, i) => p.Care is { Count: > 0 } || p.Stand is not null ? new WeekCareWalk(p, Times[i], Runs, (run, from, setUp, paused) => Fit(i, run, from, setUp, paused)) : null)];
        queue = new(problem);
        (ends, atBest) = (new int[Runs.Length], new int[Runs.Length]);
        Dictionary<string, int> places = Runs.Select((r, i) => (r.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        Dictionary<string, int> presses = problem.Presses.Select((p, i) => (p.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);

        (setUps, cents) = like is null ? SetUps(problem) : (like.setUps, like.cents);
        Minutes = [.. problem.Presses.Select(p => Runs.Select(r => r.Minutes.TryGetValue(p.Id, out int m) ? m : -1).ToArray())];
        releases = [.. Runs.Select(r => Math.Max(0, r.Release))];
        holdStart = [.. Runs.Select(_ => -1)];
        frozenStart = [.. Runs.Select(_ => -1)];
        OnlyPress = [.. Runs.Select(_ => -1)];
        foreach (WeekHold hold in problem.Holds)
            (holdStart[places[hold.RunId]], OnlyPress[places[hold.RunId]]) = (hold.Start, presses[hold.PressId]);
        Frozen = [.. problem.Presses.Select(p => problem.Frozen.Where(f => f.PressId == p.Id).Select(f => places[f.RunId]).ToArray())];
        foreach (WeekHold frozen in problem.Frozen)
            frozenStart[places[frozen.RunId]] = frozen.Start;
        chainBefore = [.. Runs.Select(r => problem.Orders.Where(o => o.Contains(r.Id)).SelectMany(o => o.TakeWhile(id => id != r.Id)).Select(id => places[id]).ToArray())];
        HasChains = chainBefore.Any(c => c.Length > 0);
    }

    internal WeekProblem Problem { get; }

    internal WeekRun[] Runs { get; }

    internal int Presses { get; }

    internal WeekTimes[] Times { get; }

    /// <summary>Minutes by press and run; −1 where the press cannot print it.</summary>
    internal int[][] Minutes { get; }

    /// <summary>The press a run is held on, or −1.</summary>
    internal int[] OnlyPress { get; }

    /// <summary>Frozen runs by press.</summary>
    internal int[][] Frozen { get; }

    internal bool HasChains { get; }

    /// <summary>Whether runs wait for each other at benches: what an order costs is then known of all presses together only.</summary>
    internal bool HasQueue => queue.HasBenches;

    /// <summary>How often it was looked for care that is due, on all presses.</summary>
    internal long Looks
    {
        get
        {
            long looks = 0;
            foreach (WeekCareWalk? walk in care)
                looks += walk?.Looks ?? 0;
            return looks;
        }
    }

    /// <summary>Whether a run may be on a press.</summary>
    internal bool MayBeOn(int run, int press) => Minutes[press][run] >= 0 && (OnlyPress[run] < 0 || OnlyPress[run] == press);

    /// <summary>Whether an order keeps the frozen runs first and the locked orders.</summary>
    internal bool Keeps(int press, IReadOnlyList<int> order)
    {
        int[] frozen = Frozen[press];
        for (int at = 0; at < frozen.Length; at++)
            if (at >= order.Count || order[at] != frozen[at])
                return false;
        if (!HasChains)
            return true;

        HashSet<int> seen = [], on = [.. order];
        foreach (int run in order)
        {
            if (chainBefore[run].Any(b => on.Contains(b) && !seen.Contains(b)))
                return false;
            seen.Add(run);
        }

        return true;
    }

    /// <summary>What waiting at benches adds to the cost of orders; stops adding where it is over <paramref name="most"/>.</summary>
    internal long Waiting(IReadOnlyList<IReadOnlyList<int>> orders, long most = long.MaxValue)
    {
        if (!HasQueue)
            return 0;
        Array.Fill(ends, WeekQueue.Absent);
        for (int press = 0; press < orders.Count; press++)
            Ends(press, orders[press]);
        return queue.Walk(ends, atBest, most);
    }

    /// <summary>Lays the next run of an order, after care kept or laid before: when it ends, and what it costs as if nobody waited at benches.</summary>
    /// <param name="press">The press.</param>
    /// <param name="before">The run before, or the number of runs plus that of the press for its present state.</param>
    /// <param name="run">The run.</param>
    /// <param name="free">When the press is free.</param>
    internal (int End, long Cost) Lay(int press, int before, int run, int free)
    {
        int setUp = setUps[before][run];
        (_, int start, int end) = Next(press, run, free, setUp);
        return (end, Cost(run, setUp, cents[before][run], start, end));
    }

    /// <summary>The care of a press along an order, or null where none is planned.</summary>
    internal WeekCareWalk? CareOf(int press) => care[press];

    /// <summary>Cost of an order on a press as if nobody waited at benches; stops adding where it is over <paramref name="most"/>.</summary>
    internal long Cost(int press, IReadOnlyList<int> order, long most = long.MaxValue)
    {
        care[press]?.Begin();
        long cost = 0;
        int free = 0, before = Runs.Length + press;
        for (int at = 0; at < order.Count && cost <= most; at++)
        {
            int run = order[at], setUp = setUps[before][run];
            (_, int start, int end) = Next(press, run, free, setUp);
            cost += Cost(run, setUp, cents[before][run], start, end);
            (free, before) = (end, run);
        }

        return cost;
    }

    /// <summary>Minutes that a run is late in orders of all presses, and all others together, printed ones contained.</summary>
    internal (int OfRun, int Others) Late(IReadOnlyList<IReadOnlyList<int>> orders, int run)
    {
        if (!HasQueue)
            return orders.Select((o, p) => Late(p, o, run)).Aggregate((a, b) => (a.OfRun + b.OfRun, a.Others + b.Others));
        Waiting(orders);
        int LateOf(int r) => Math.Max(0, queue.Ready[r] - Runs[r].Due);
        return (LateOf(run), orders.Sum(o => o.Where(r => r != run).Sum(LateOf)) + PrintedReady().Sum(p => p.Late));
    }

    /// <summary>Printed runs as the last walk over the benches found them.</summary>
    internal IEnumerable<WeekReady> PrintedReady() =>
        queue.Printed.Select((p, i) => new WeekReady(p.RunId, queue.Ready[Runs.Length + i], Math.Max(0, queue.Ready[Runs.Length + i] - p.Due)));

    /// <summary>Minutes that a run is late in an order, and all others of it together, as if nobody waited at benches.</summary>
    internal (int OfRun, int Others) Late(int press, IReadOnlyList<int> order, int run)
    {
        care[press]?.Begin();
        (int ofRun, int others, int free, int before) = (0, 0, 0, Runs.Length + press);
        foreach (int next in order)
        {
            (_, _, int end) = Next(press, next, free, setUps[before][next]);
            int late = Math.Max(0, queue.AtBest(next, end) - Runs[next].Due);
            (ofRun, others, free, before) = next == run ? (late, others, end, next) : (ofRun, others + late, end, next);
        }

        return (ofRun, others);
    }

    /// <summary>Places of orders on all presses; told of what happens at benches, of care and of long stops.</summary>
    internal IReadOnlyList<(WeekPlace Place, int Cents)> Laid(IReadOnlyList<IReadOnlyList<int>> orders, Action<WeekVisit> visit, Action<WeekBlock> block, Action<WeekStop> stop)
    {
        queue.Told = (job, bench, place, step, start, end) => visit(Visit(job, bench, place, step, start, end));
        Waiting(orders);
        queue.Told = null;
        List<(WeekPlace, int)> places = [];
        for (int press = 0; press < orders.Count; press++)
        {
            List<WeekBlock> blocks = [];
            care[press]?.Told = blocks.Add;
            care[press]?.ToldStop = stop;
            places.AddRange(Places(press, orders[press], blocks));
            care[press]?.Told = null;
            care[press]?.ToldStop = null;
            foreach (WeekBlock one in blocks.OrderBy(b => b.Start))
                block(one);
        }

        return places;
    }

    private WeekVisit Visit(int job, int bench, int place, int step, int start, int end)
    {
        (string id, IReadOnlyList<WeekStep> steps) = job < Runs.Length ? (Runs[job].Id, Runs[job].Steps) : (queue.Printed[job - Runs.Length].RunId, queue.Printed[job - Runs.Length].Steps);
        IReadOnlyList<WeekSpan> parts = steps[step].Unattended ? [new(start, end)] : queue.PlaceOf(bench, place).Within(start, end);
        return new(id, Problem.Benches![bench].Id, place, steps[step].Name, queue.CameAt(job), start, end, parts);
    }

    private void Ends(int press, IReadOnlyList<int> order)
    {
        care[press]?.Begin();
        int free = 0, before = Runs.Length + press;
        foreach (int run in order)
        {
            (_, _, free) = Next(press, run, free, setUps[before][run]);
            (ends[run], atBest[run], before) = (free, queue.AtBest(run, free), run);
        }
    }

    private IEnumerable<(WeekPlace Place, int Cents)> Places(int press, IReadOnlyList<int> order, List<WeekBlock> blocks)
    {
        care[press]?.Begin();
        int free = 0, before = Runs.Length + press;
        foreach (int run in order)
        {
            int setUp = setUps[before][run];
            (int setUpStart, int start, int end) = Next(press, run, free, setUp);
            int ready = HasQueue ? queue.Ready[run] : queue.AtBest(run, end);
            yield return (new(
                Runs[run].Id, Problem.Presses[press].Id, setUpStart, setUp, start, end, ready, Math.Max(0, ready - Runs[run].Due),
                WeekSpan.Without(Parts(press, setUpStart, setUp, start, end), blocks.Where(b => b.RunId == Runs[run].Id).Select(b => new WeekSpan(b.Start, b.End))), end > Times[press].Horizon,
                Problem.Changes.Because(before < Runs.Length ? Runs[before].Traits : Problem.Presses[press].State, Runs[run].Traits)), cents[before][run]);
            (free, before) = (end, run);
        }
    }

    private static (int[][] Minutes, int[][] Cents) SetUps(WeekProblem problem)
    {
        // Rows: a run before, then the present state of each press.
        WeekTraits?[] before = [.. problem.Runs.Select(r => (WeekTraits?)r.Traits), .. problem.Presses.Select(p => p.State)];
        // Many runs are set up alike: each pair of kinds is reckoned once.
        WeekTraits[] kinds = [.. problem.Runs.Select(r => r.Traits).Distinct()];
        int[] kindOf = [.. problem.Runs.Select(r => Array.IndexOf(kinds, r.Traits))];
        (int Minutes, int Cents)[][] changes = [.. before.Distinct().Select(b => kinds.Select(k => (problem.Changes.Minutes(b, k), problem.Changes.Cents(b, k))).ToArray())];
        WeekTraits?[] from = [.. before.Distinct()];
        int[] fromOf = [.. before.Select(b => Array.IndexOf(from, b))];
        return ([.. fromOf.Select(f => kindOf.Select(k => changes[f][k].Minutes).ToArray())], [.. fromOf.Select(f => kindOf.Select(k => changes[f][k].Cents).ToArray())]);
    }

    private (int SetUpStart, int Start, int End) Next(int press, int run, int free, int setUp) => care[press] is { } walk
        ? walk.Lay(run, Minutes[press][run], free, setUp)
        : Fit(press, run, free, setUp, 0);

    private (int SetUpStart, int Start, int End) Fit(int press, int run, int free, int setUp, int paused)
    {
        int from = frozenStart[run] >= 0 ? Math.Max(free, frozenStart[run] - setUp) : free, release = Math.Max(releases[run], holdStart[run]);
        while (true)
        {
            (int SetUpStart, int Start, int End) fit = Times[press].Fit(from, setUp, Minutes[press][run] + paused, release, Runs[run].MayPause);
            int past = stops[press].Past(fit.SetUpStart, fit.End, setUp + Minutes[press][run] + paused);
            if (past < 0)
                return fit;
            from = past;
        }
    }

    private IReadOnlyList<WeekSpan> Parts(int press, int setUpStart, int setUp, int start, int end)
    {
        int set = Times[press].After(setUpStart, setUp);
        IReadOnlyList<WeekSpan> parts = [.. Times[press].Within(setUpStart, Math.Max(set, setUpStart)), .. Times[press].Within(start, end)];
        List<WeekSpan> joined = [];
        foreach (WeekSpan part in parts)
        {
            if (joined.Count > 0 && joined[^1].End == part.Start)
                joined[^1] = joined[^1] with { End = part.End };
            else
                joined.Add(part);
        }

        return joined;
    }

    private long Cost(int run, int setUp, int lost, int start, int end)
    {
        long late = Math.Max(0, queue.AtBest(run, end) - Runs[run].Due), wait = holdStart[run] < 0 ? 0 : Math.Max(0, start - Math.Max(holdStart[run], releases[run]));
        return (late * Runs[run].Weight) + (wait * HoldWeight) + ((long)setUp * Problem.SetUpWeight) + (lost / 100);
    }
}
