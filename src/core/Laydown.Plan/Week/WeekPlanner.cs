using Laydown.Layout.Search;

namespace Laydown.Plan.Week;

/// <summary>Plans the runs of a week over presses and shifts; any-time.</summary>
/// <remarks>
/// The first answer puts runs by due time where each costs least; then moves by chance within and between presses are taken while patience lasts (a walk from warm to cold
/// [Kirkpatrick1983]). Where benches have few places, what waiting there costs is weighed with all presses together. Frozen runs, holds and locked orders are kept at every step. The same seed and iterations give the same plan on every machine.
/// </remarks>
public static class WeekPlanner
{
    /// <summary>Iterations that suit a drag: on 200 runs over two presses under a second of processor time.</summary>
    public const int UsualIterations = 100_000;

    /// <summary>Plans.</summary>
    /// <param name="problem">The problem, without faults.</param>
    /// <param name="rules">Seed and iterations; 0 iterations give the first answer. Workers are not used.</param>
    /// <param name="standing">A plan to begin with, such as the one before a drag; its runs that are no more are left out, new ones are put in. Null for none.</param>
    /// <param name="better">Told the first plan and better ones, some dozens at most; null where nobody listens.</param>
    /// <param name="stop">Ends the search; the best so far comes back.</param>
    /// <exception cref="ArgumentException">The problem has a fault.</exception>
    public static WeekPlan Solve(WeekProblem problem, SearchRules rules, WeekPlan? standing, Action<WeekPlan>? better, CancellationToken stop)
    {
        if (problem.Faults() is [var fault, ..])
            throw new ArgumentException(fault, nameof(problem));
        WeekModel model = new(problem);
        WeekSearch search = new(model, standing, rules.Seed);
        better?.Invoke(PlanOf(model, search.Best));
        const int steps = 50;
        for (int step = 0; step < steps && !stop.IsCancellationRequested && rules.Iterations > 0; step++)
            if (search.Run(Share(rules.Iterations, step, steps), 1 - ((double)step / steps), stop))
                better?.Invoke(PlanOf(model, search.Best));
        return PlanOf(model, search.Best);
    }

    /// <summary>The plan of orders given by hand: nothing is searched, and runs not named are left out.</summary>
    /// <exception cref="ArgumentException">The problem has a fault, or a run stands on a press that cannot print it.</exception>
    public static WeekPlan Lay(WeekProblem problem, IReadOnlyDictionary<string, IReadOnlyList<string>> order)
    {
        if (problem.Faults() is [var fault, ..])
            throw new ArgumentException(fault, nameof(problem));
        WeekModel model = new(problem);
        List<int>[] orders = WeekSearch.OrdersOf(model, order);
        for (int press = 0; press < model.Presses; press++)
            if (orders[press].FirstOrDefault(r => model.Minutes[press][r] < 0, -1) is >= 0 and var bad)
                throw new ArgumentException(Invariant($"Run {model.Runs[bad].Id}: press {problem.Presses[press].Id} cannot print it."), nameof(order));
        return PlanOf(model, orders);
    }

    private static WeekPlan PlanOf(WeekModel model, IReadOnlyList<IReadOnlyList<int>> orders)
    {
        long cost = orders.Select((o, p) => model.Cost(p, o)).Sum() + model.Waiting(orders);
        List<WeekVisit> visits = [];
        List<WeekBlock> care = [];
        IReadOnlyList<(WeekPlace Place, int Cents)> places = model.Laid(orders, visits.Add, care.Add);
        return new([.. places.Select(p => p.Place)], cost, places.Sum(p => p.Place.SetUpMinutes), places.Sum(p => p.Cents))
        {
            Visits = [.. visits.OrderBy(v => v.BenchId, StringComparer.Ordinal).ThenBy(v => v.Start).ThenBy(v => v.Place)],
            Printed = model.HasQueue ? [.. model.PrintedReady()] : [],
            Care = care,
        };
    }

    private static long Share(long all, int step, int steps) => (Math.Min(all, long.MaxValue / 64) * (step + 1) / steps) - (Math.Min(all, long.MaxValue / 64) * step / steps);
}
