using Laydown.Layout.Search;

namespace Laydown.Plan.Week;

/// <summary>Plans the runs of a week over presses and shifts; any-time.</summary>
/// <remarks>
/// The first answer puts runs by due time where each costs least; then moves by chance within and between presses are taken while patience lasts (a walk from warm to cold
/// [Kirkpatrick1983]). A plan that stands is bettered nearby first, as people have seen it. Where benches have few places, what waiting there costs is weighed with all presses together. Frozen runs, holds and locked orders are kept at every step. The same seed and iterations give the same plan on every machine.
/// </remarks>
public static class WeekPlanner
{
    /// <summary>Iterations that suit a drag: on 200 runs over two presses about a second on each of two cores.</summary>
    public const int UsualIterations = 400_000;

    /// <summary>Warmth at the start, shares of the mean cost of a run: of a new plan, and of one that is bettered nearby; and how much colder the end is.</summary>
    private const double Warm = 0.5;

    private const double Cool = 0.02;
    private const double Cooling = 100;

    /// <summary>What a plan made afresh may cost of one that stands, for it to be put in its place.</summary>
    private const double WorthChanging = 0.95;

    /// <summary>What it may cost of one that stands, for it to be told of.</summary>
    private const double WorthTelling = 0.99;

    /// <summary>Plans.</summary>
    /// <param name="problem">The problem, without faults.</param>
    /// <param name="rules">Seed and iterations of each of two walks; 0 iterations give the first answer. Workers are not used.</param>
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
        if (rules.Iterations == 0 || stop.IsCancellationRequested)
            return PlanOf(model, search.Best);

        // Two walks side by side, on as many cores: what stands is bettered nearby, and all is put afresh. With nothing that stands both are new plans.
        WeekModel beside = new(problem, model);
        WeekSearch afresh = new(beside, null, rules.Seed + 1);
        Parallel.Invoke(
            () => Walk(search, rules.Iterations, standing is null ? Warm : Cool, b => better?.Invoke(PlanOf(model, b)), stop),
            () => Walk(afresh, rules.Iterations, Warm, null, stop));
        if (afresh.BestCost >= (standing is null ? 1 : WorthChanging) * search.BestCost)
            return standing is null || afresh.BestCost > WorthTelling * search.BestCost ? PlanOf(model, search.Best) : PlanOf(model, search.Best) with { Afresh = PlanOf(model, afresh.Best) };
        better?.Invoke(PlanOf(model, afresh.Best));
        return PlanOf(model, afresh.Best) with { MadeAfresh = standing is not null };
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
        List<WeekStop> stops = [];
        IReadOnlyList<(WeekPlace Place, int Cents)> places = model.Laid(orders, visits.Add, care.Add, stops.Add);
        return new([.. places.Select(p => p.Place)], cost, places.Sum(p => p.Place.SetUpMinutes), places.Sum(p => p.Cents))
        {
            Visits = [.. visits.OrderBy(v => v.BenchId, StringComparer.Ordinal).ThenBy(v => v.Start).ThenBy(v => v.Place)],
            Printed = model.HasQueue ? [.. model.PrintedReady()] : [],
            Care = care,
            Stops = stops,
        };
    }

    // From warm to cold in equal steps; a gain is told.
    private static void Walk(WeekSearch search, long iterations, double warm, Action<int[][]>? better, CancellationToken stop)
    {
        const int steps = 50;
        double warmth = warm * search.MeanCost, factor = 1 / (1 + (WeekChance.MinusLog(1 / Cooling) / steps));
        for (int step = 0; step < steps && !stop.IsCancellationRequested && iterations > 0; step++, warmth *= factor)
            if (search.Run(Share(iterations, step, steps), warmth, stop))
                better?.Invoke(search.Best);
    }

    private static long Share(long all, int step, int steps) => (Math.Min(all, long.MaxValue / 64) * (step + 1) / steps) - (Math.Min(all, long.MaxValue / 64) * step / steps);
}
