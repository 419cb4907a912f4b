using System.Numerics;

namespace Laydown.Plan.Week;

/// <summary>The walk of the planner over orders of runs on presses.</summary>
/// <remarks>
/// Moves by chance: two runs of a press change places, a block of them comes earlier or later, some go over to about the same time of another press; short ways
/// are drawn most. A move is taken where it costs no more than patience times warmth allows.
/// </remarks>
internal sealed class WeekSearch
{
    /// <summary>Longest block that is moved on a press, and to another one.</summary>
    private const int MostBlock = 8;

    private const int MostMoved = 4;

    /// <summary>Moves to another press and swaps, among 256.</summary>
    private const int ToOthers = 64;

    private const int Swaps = 96;

    /// <summary>Moves that a walk over the benches counts as, so that as many moves take about as long with benches as without; measured.</summary>
    private const int WalkMoves = 12;

    /// <summary>Looks for care that is due that count as a move, so that a week with care is planned in the time wanted; measured.</summary>
    private const int LooksOfMove = 60;

    private readonly WeekModel model;
    private readonly WeekChance chance;
    private readonly WeekRow[] rows;
    private readonly int[] window;
    private long waiting;
    private long looked;

    internal WeekSearch(WeekModel model, WeekPlan? standing, int seed)
    {
        this.model = model;
        chance = new(seed);
        window = new int[model.Runs.Length];
        List<int>[] orders = OrdersOf(model, standing?.Order ?? new Dictionary<string, IReadOnlyList<string>>());
        for (int press = 0; press < model.Presses; press++)
            orders[press] = [.. model.Frozen[press], .. orders[press].Where(r => model.MayBeOn(r, press) && !model.Frozen.Any(f => f.Contains(r)))];
        for (int press = 0; press < model.Presses; press++)
            while (!model.Keeps(press, orders[press]))
                orders[press].RemoveAt(FirstBroken(press, orders[press]));
        rows = [.. orders.Select((o, p) => new WeekRow(model, p, o.ToArray()))];
        foreach (int run in Enumerable.Range(0, model.Runs.Length).Except(orders.SelectMany(o => o)).OrderBy(r => model.Runs[r].Due).ThenBy(r => r).ToArray())
            Insert(run);
        Best = Orders();
        waiting = model.Waiting(Best);
        BestCost = Cost;
        MeanCost = (double)BestCost / Math.Max(1, model.Runs.Length);
    }

    /// <summary>The best orders, by press.</summary>
    internal int[][] Best { get; private set; }

    /// <summary>What they cost.</summary>
    internal long BestCost { get; private set; }

    /// <summary>What a run cost at the start, on average.</summary>
    internal double MeanCost { get; }

    private long Cost
    {
        get
        {
            long sum = waiting;
            foreach (WeekRow row in rows)
                sum += row.Cost;
            return sum;
        }
    }

    /// <summary>Orders of a plan by places; runs that are not in the problem are left out.</summary>
    internal static List<int>[] OrdersOf(WeekModel model, IReadOnlyDictionary<string, IReadOnlyList<string>> order)
    {
        Dictionary<string, int> places = model.Runs.Select((r, i) => (r.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        return [.. model.Problem.Presses.Select(p => order.TryGetValue(p.Id, out IReadOnlyList<string>? runs) ? runs.Where(places.ContainsKey).Select(r => places[r]).ToList() : [])];
    }

    /// <summary>Tries so many moves; true where a better plan was found.</summary>
    /// <param name="iterations">Moves; where benches are walked over or care is planned, fewer.</param>
    /// <param name="warmth">How much worse a move may be, in units of cost, on average.</param>
    /// <param name="stop">Ends the walk.</param>
    internal bool Run(long iterations, double warmth, CancellationToken stop)
    {
        long before = BestCost;
        int untilAsked = 0;
        for (long i = 0; i < iterations && (untilAsked++ % 256 != 0 || !stop.IsCancellationRequested); i++)
        {
            long looks = model.Looks;
            i += Try(warmth) ? WalkMoves : 0;
            looked += model.Looks - looks;
            i += looked / LooksOfMove;
            looked %= LooksOfMove;
        }

        return BestCost < before;
    }

    // True where the benches were walked over.
    private bool Try(double warmth)
    {
        long most = Cost + (long)(warmth * chance.Patience());
        int press = chance.Below(rows.Length);
        return rows.Length > 1 && chance.Below(256) < ToOthers ? MoveOver(press, most) : MoveWithin(press, most);
    }

    private bool MoveWithin(int press, long most)
    {
        WeekRow row = rows[press];
        int frozen = model.Frozen[press].Length, count = row.Count - frozen;
        if (count < 2)
            return false;
        (int from, int length) = chance.Below(256) < Swaps ? Swap(row, frozen, count) : Shift(row, frozen, count);
        WeekPart part = new(press, from, window[..length], from + length);
        if (!Keeps(part))
            return false;
        long others = Cost - waiting - row.Cost, cost = row.With(from, part.Then, part.Resume, most - others);
        return cost <= most - others && Take(most, others + cost, part);
    }

    // Two runs change places: the window of them and all between, as it is then.
    private (int From, int Length) Swap(WeekRow row, int frozen, int count)
    {
        int way = Short(count - 1), from = frozen + chance.Below(count - way);
        row.Order.Slice(from, way + 1).CopyTo(window);
        (window[0], window[way]) = (window[way], window[0]);
        return (from, way + 1);
    }

    // A block comes some places earlier or later: it changes places with what lies on its way.
    private (int From, int Length) Shift(WeekRow row, int frozen, int count)
    {
        int block = Short(Math.Min(MostBlock, count - 1)), way = Math.Min(Short(count - 1), count - block), length = block + way;
        int from = frozen + chance.Below(count - length + 1), turn = chance.Below(2) == 0 ? block : way;
        row.Order.Slice(from + turn, length - turn).CopyTo(window);
        row.Order.Slice(from, turn).CopyTo(window.AsSpan(length - turn));
        return (from, length);
    }

    private bool MoveOver(int press, long most)
    {
        int to = chance.Below(rows.Length - 1);
        to += to >= press ? 1 : 0;
        WeekRow source = rows[press], target = rows[to];
        int frozen = model.Frozen[press].Length, count = source.Count - frozen, least = model.Frozen[to].Length;
        if (count == 0)
            return false;
        int block = Short(Math.Min(MostMoved, count)), at = frozen + chance.Below(count - block + 1), off = Short(target.Count - least + 1) - 1;
        int place = target.PlaceAt(source.FreeAt(at), least) + (chance.Below(2) == 0 ? off : -off);
        WeekPart put = new(to, place, source.Order.Slice(at, block).ToArray(), place), taken = new(press, at, [], at + block);
        if (place < least || place > target.Count || put.Then.Any(r => !model.MayBeOn(r, to)) || !Keeps(put) || !Keeps(taken))
            return false;

        long others = Cost - waiting - source.Cost - target.Cost, open = most - others;
        long ofTarget = target.With(place, put.Then, place, open - source.CostBefore(at));
        if (ofTarget + source.CostBefore(at) > open)
            return false;
        long ofSource = source.With(at, [], at + block, open - ofTarget);
        return ofTarget + ofSource <= open && Take(most, others + ofTarget + ofSource, put, taken);
    }

    // Without waiting at benches the change is good enough; whether it is with that is seen here. True where they were walked over.
    private bool Take(long most, long withoutWaiting, params ReadOnlySpan<WeekPart> parts)
    {
        if (model.HasQueue)
        {
            int[][] then = Orders();
            foreach (WeekPart part in parts)
                then[part.Press] = rows[part.Press].Changed(part);
            long waits = model.Waiting(then, most - withoutWaiting);
            if (withoutWaiting + waits > most)
                return true;
            waiting = waits;
        }

        foreach (WeekPart part in parts)
            rows[part.Press].Put(part.From, part.Then, part.Resume);
        if (Cost < BestCost)
            (BestCost, Best) = (Cost, Orders());
        return model.HasQueue;
    }

    private bool Keeps(WeekPart part) => !model.HasChains || model.Keeps(part.Press, rows[part.Press].Changed(part));

    // From 1 to a number, small ones most: about as often as one over it.
    private int Short(int most) => 1 + chance.Below(Math.Min(most, 1 << chance.Below(BitOperations.Log2((uint)most) + 2)));

    private int[][] Orders() => [.. rows.Select(r => r.Order.ToArray())];

    private void Insert(int run)
    {
        (int press, int place, long added) = (-1, 0, long.MaxValue);
        for (int p = 0; p < rows.Length; p++)
        {
            if (!model.MayBeOn(run, p))
                continue;
            for (int at = rows[p].Count; at >= model.Frozen[p].Length; at--)
            {
                if (!Keeps(new(p, at, [run], at)))
                    continue;
                long more = rows[p].With(at, [run], at, added == long.MaxValue ? added : rows[p].Cost + added) - rows[p].Cost;
                if (more < added)
                    (press, place, added) = (p, at, more);
            }
        }

        if (press < 0)
            throw new InvalidOperationException(Invariant($"Run {model.Runs[run].Id} has no place on any press."));
        rows[press].Put(place, [run], place);
    }

    private int FirstBroken(int press, List<int> order)
    {
        int at = model.Frozen[press].Length;
        while (at < order.Count && model.Keeps(press, order.GetRange(0, at + 1)))
            at++;
        return Math.Min(at, order.Count - 1);
    }
}
