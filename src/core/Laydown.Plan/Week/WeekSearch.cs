namespace Laydown.Plan.Week;

/// <summary>The walk of the planner over orders of runs on presses.</summary>
internal sealed class WeekSearch
{
    private const int MostBlock = 6;

    /// <summary>Warmth at the start, share of the mean cost of a run.</summary>
    private const double Warm = 0.02;

    /// <summary>Moves that a walk over the benches counts as, so that as many moves take about as long with benches as without; measured.</summary>
    private const int WalkMoves = 12;

    private readonly WeekModel model;
    private readonly WeekChance chance;
    private readonly List<int>[] orders;
    private readonly long[] costs;
    private readonly double start;
    private long waiting;
    private long bestCost;

    internal WeekSearch(WeekModel model, WeekPlan? standing, int seed)
    {
        this.model = model;
        chance = new(seed);
        orders = OrdersOf(model, standing?.Order ?? new Dictionary<string, IReadOnlyList<string>>());
        for (int press = 0; press < model.Presses; press++)
            orders[press] = [.. model.Frozen[press], .. orders[press].Where(r => model.MayBeOn(r, press) && !model.Frozen.Any(f => f.Contains(r)))];
        while (Array.FindIndex(orders, o => o.Count > 0 && !model.Keeps(Array.IndexOf(orders, o), o)) is >= 0 and var broken)
            orders[broken].RemoveAt(FirstBroken(broken));
        costs = [.. orders.Select((o, p) => model.Cost(p, o))];
        foreach (int run in Enumerable.Range(0, model.Runs.Length).Except(orders.SelectMany(o => o)).OrderBy(r => model.Runs[r].Due).ThenBy(r => r).ToArray())
            Insert(run);
        waiting = model.Waiting(orders);
        bestCost = costs.Sum() + waiting;
        Best = [.. orders.Select(o => o.ToArray())];
        start = Warm * bestCost / Math.Max(1, model.Runs.Length);
    }

    /// <summary>The best orders, by press.</summary>
    internal int[][] Best { get; private set; }

    /// <summary>Orders of a plan by places; runs that are not in the problem are left out.</summary>
    internal static List<int>[] OrdersOf(WeekModel model, IReadOnlyDictionary<string, IReadOnlyList<string>> order)
    {
        Dictionary<string, int> places = model.Runs.Select((r, i) => (r.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        return [.. model.Problem.Presses.Select(p => order.TryGetValue(p.Id, out IReadOnlyList<string>? runs) ? runs.Where(places.ContainsKey).Select(r => places[r]).ToList() : [])];
    }

    /// <summary>Tries so many moves; true where a better plan was found.</summary>
    internal bool Run(long iterations, double warmth, CancellationToken stop)
    {
        long before = bestCost;
        double heat = start * warmth * warmth;
        int untilAsked = 0;
        for (long i = 0; i < iterations && (untilAsked++ % 256 != 0 || !stop.IsCancellationRequested); i++)
            i += Try(heat) ? WalkMoves : 0;
        return bestCost < before;
    }

    // True where the benches were walked over.
    private bool Try(double heat)
    {
        int from = chance.Below(model.Presses), to = chance.Below(4) == 0 ? chance.Below(model.Presses) : from;
        int free = orders[from].Count - model.Frozen[from].Length;
        if (free == 0)
            return false;
        int block = 1 + chance.Below(Math.Min(free, MostBlock)), at = model.Frozen[from].Length + chance.Below(free - block + 1);
        List<int> moved = orders[from].GetRange(at, block), source = [.. orders[from]];
        if (to != from && moved.Any(r => !model.MayBeOn(r, to)))
            return false;

        source.RemoveRange(at, block);
        List<int> target = to == from ? source : [.. orders[to]];
        target.InsertRange(model.Frozen[to].Length + chance.Below(target.Count - model.Frozen[to].Length + 1), moved);
        if (!model.Keeps(to, target) || (to != from && !model.Keeps(from, source)))
            return false;

        // What the change may cost at most: the cost of the two presses and of waiting at benches as they are, and patience.
        long old = costs[to] + (to == from ? 0 : costs[from]) + waiting, most = old + (long)(heat * chance.Patience());
        long ofSource = to == from ? 0 : model.Cost(from, source, most), ofTarget = model.Cost(to, target, most - ofSource);
        if (ofSource + ofTarget > most)
            return false;
        Take(from, source, ofSource, to, target, ofTarget, most - ofSource - ofTarget);
        return model.HasQueue;
    }

    // Without waiting at benches the change is good enough; whether it is with that is seen here.
    private void Take(int from, List<int> source, long ofSource, int to, List<int> target, long ofTarget, long most)
    {
        (List<int> sourceBefore, List<int> targetBefore) = (orders[from], orders[to]);
        orders[to] = target;
        if (to != from)
            orders[from] = source;
        long then = model.Waiting(orders, most);
        if (then > most)
        {
            (orders[from], orders[to]) = (sourceBefore, targetBefore);
            return;
        }

        (costs[to], waiting) = (ofTarget, then);
        if (to != from)
            costs[from] = ofSource;
        if (costs.Sum() + waiting >= bestCost)
            return;
        bestCost = costs.Sum() + waiting;
        Best = [.. orders.Select(o => o.ToArray())];
    }

    private void Insert(int run)
    {
        (int press, int place, long added) = (-1, 0, long.MaxValue);
        for (int p = 0; p < model.Presses; p++)
        {
            if (!model.MayBeOn(run, p))
                continue;
            List<int> order = [.. orders[p]];
            for (int at = order.Count; at >= model.Frozen[p].Length; at--)
            {
                order.Insert(at, run);
                long more = model.Keeps(p, order) ? model.Cost(p, order, added == long.MaxValue ? added : costs[p] + added) - costs[p] : long.MaxValue;
                if (more < added)
                    (press, place, added) = (p, at, more);
                order.RemoveAt(at);
            }
        }

        if (press < 0)
            throw new InvalidOperationException(Invariant($"Run {model.Runs[run].Id} has no place on any press."));
        orders[press].Insert(place, run);
        costs[press] += added;
    }

    private int FirstBroken(int press)
    {
        int at = model.Frozen[press].Length;
        while (at < orders[press].Count && model.Keeps(press, orders[press].GetRange(0, at + 1)))
            at++;
        return Math.Min(at, orders[press].Count - 1);
    }
}
