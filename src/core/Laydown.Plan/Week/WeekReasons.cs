namespace Laydown.Plan.Week;

/// <summary>Tells of late runs why, and what would save them: each remedy is tried on the plan, not guessed.</summary>
public static class WeekReasons
{
    /// <summary>Late runs that are explained at most: more would be read by nobody.</summary>
    public const int Most = 20;

    /// <summary>The late runs of a plan, the latest first, at most <see cref="Most"/>.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="plan">A plan of it.</param>
    public static IReadOnlyList<WeekWhy> Of(WeekProblem problem, WeekPlan plan)
    {
        WeekPlace[] late = [.. plan.Places.Where(p => p.Late > 0).OrderByDescending(p => p.Late).ThenBy(p => p.RunId, StringComparer.Ordinal).Take(Most)];
        if (late.Length == 0)
            return [];
        WeekModel model = new(problem);
        return [.. late.Select(p => Of(problem, model, plan, p))];
    }

    /// <summary>Minutes in words, such as <c>2 h 05 min</c>.</summary>
    public static string Words(int minutes) => minutes < 60 ? Invariant($"{minutes} min") : Invariant($"{minutes / 60} h {minutes % 60:00} min");

    /// <summary>A run as it would be on another press, for which it was planned anew: where it would stand best among the others as they stand.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="plan">A plan of it.</param>
    /// <param name="there">The run on that press alone.</param>
    /// <returns>Where, and what it makes of it and the others; money is not reckoned here.</returns>
    /// <exception cref="ArgumentException">No such run in the problem, or more presses than one.</exception>
    public static WeekRemedy Elsewhere(WeekProblem problem, WeekPlan plan, WeekRun there)
    {
        if (there.Minutes.Count != 1 || problem.Runs.All(r => r.Id != there.Id))
            throw new ArgumentException(Invariant($"Run {there.Id}: found {there.Minutes.Count} presses; wanted a run of the problem, on one press."), nameof(there));
        WeekProblem asked = problem with
        {
            Runs = [.. problem.Runs.Select(r => r.Id == there.Id ? there : r)],
            Frozen = [.. problem.Frozen.Where(f => f.RunId != there.Id)],
            Holds = [.. problem.Holds.Where(h => h.RunId != there.Id)],
        };
        return Moved(asked, null, plan, there, there.Minutes.Keys.Single()) ?? throw new ArgumentException(Invariant($"Run {there.Id}: no place keeps the locked orders."), nameof(there));
    }

    private static WeekWhy Of(WeekProblem problem, WeekModel model, WeekPlan plan, WeekPlace place)
    {
        WeekRun run = problem.Runs.First(r => r.Id == place.RunId);
        return new(run.Id, place.Late, [.. Because(problem, plan, place, run)], [.. Remedies(problem, model, plan, place, run)
            .Where(r => r.LateThen < place.Late).OrderBy(r => r.LateThen).ThenBy(r => r.OthersLater).Take(5)]);
    }

    private static IEnumerable<string> Because(WeekProblem problem, WeekPlan plan, WeekPlace place, WeekRun run)
    {
        WeekPlan alone = WeekPlanner.Solve(problem with { Runs = [run], Frozen = [], Holds = [], Orders = [], Printed = null }, new(1, 0), null, null, CancellationToken.None);

        // Alone it is set up from nothing, which may take longer than after the run before it: in the plan it is never late by less than it must be.
        int late = Math.Min(alone.Places[0].Late, place.Late);
        if (late > 0)
            yield return Invariant($"Even alone it would be {Words(late)} late: {(run.Release > 0 ? "its artwork or material is there too late" : "it takes longer than is left")}.");
        WeekPlace[] before = [.. plan.Places.Where(p => p.PressId == place.PressId && p.End <= place.SetUpStart && p.End > run.Release)];
        if (before.Length > 0)
        {
            int minutes = before.Sum(p => p.Parts.Sum(s => Math.Max(0, s.End - Math.Max(s.Start, run.Release))));
            yield return Invariant($"It waits for {Count(before.Length)} on {place.PressId}, {Words(minutes)}: {string.Join(", ", before.TakeLast(4).Select(p => p.RunId))}{(before.Length > 4 ? " and others" : "")}.");
        }

        int shut = Math.Max(0, place.End - run.Release) - Open(problem.Presses.First(p => p.Id == place.PressId).Open, run.Release, place.End);
        if (shut > 0)
            yield return Invariant($"The press stands shut {Words(shut)} of that time.");
        WeekBlock[] care = [.. plan.Care.Where(b => b.PressId == place.PressId && b.Start >= run.Release && b.End <= place.End)];
        if (care.Length > 0)
            yield return Invariant($"Care of {place.PressId} takes {Words(care.Sum(b => b.End - b.Start))} of that time.");
        if (place.SetUpMinutes > 0)
            yield return Invariant($"Setting up for it takes {Words(place.SetUpMinutes)}.");
        if (place.Ready > place.End)
            yield return Invariant($"Steps after the press take until {Words(place.Ready - place.End)} after printing: {string.Join(", ", run.Steps.Select(s => s.Name))}.");
        foreach (WeekVisit visit in plan.Visits.Where(v => v.RunId == run.Id && v.Start > v.Come))
            yield return AtBench(problem, plan, visit);
        if (problem.Holds.Any(h => h.RunId == run.Id))
            yield return "It was put there by hand.";
    }

    // Why a run waits at a bench: others are on it, or nobody is there.
    private static string AtBench(WeekProblem problem, WeekPlan plan, WeekVisit visit)
    {
        WeekBench bench = problem.Benches!.First(b => b.Id == visit.BenchId);
        string wait = Words(visit.Start - visit.Come);
        string[] others = [.. plan.Visits.Where(v => v.BenchId == visit.BenchId && v.RunId != visit.RunId && v.Start < visit.Start && v.End > visit.Come).Select(v => v.RunId).Distinct(StringComparer.Ordinal)];
        if (others.Length == 0)
            return Invariant($"At {bench.Called} it waits {wait} until that is worked.");
        int worked = bench.Places.Max(p => Open(p, visit.Come, visit.Start));
        string full = Invariant($"full with {string.Join(", ", others.TakeLast(4))}{(others.Length > 4 ? " and others" : "")}");
        return Invariant($"At {bench.Called} ({Count(bench.Places.Count, "place", "places")}) it waits {wait}: {(worked < visit.Start - visit.Come ? Invariant($"{Words(worked)} of that it is {full}, else nobody is there") : full)}.");
    }

    // What the benches at which it waits could do for it.
    private static IEnumerable<WeekRemedy> AtBenches(WeekProblem problem, WeekModel model, WeekPlan plan, string runId)
    {
        HashSet<string> waits = [.. plan.Visits.Where(v => v.RunId == runId && v.Start > v.Come).Select(v => v.BenchId)];
        foreach (WeekBench bench in (problem.Benches ?? []).Where(b => waits.Contains(b.Id)))
        {
            WeekRemedy With(WeekBench other, string what) => Tried(problem with { Benches = [.. problem.Benches!.Select(b => b.Id == bench.Id ? other : b)] }, model, plan, runId, what);
            yield return With(bench with { Places = [.. bench.Places, bench.Places[0]] }, Invariant($"One place more at {bench.Called}."));
            yield return With(bench with { Places = [.. bench.Places.Select(_ => (IReadOnlyList<WeekSpan>)[])] }, Invariant($"{bench.Called} worked without a break."));
        }
    }

    private static IEnumerable<WeekRemedy> Remedies(WeekProblem problem, WeekModel model, WeekPlan plan, WeekPlace place, WeekRun run)
    {
        foreach (WeekPress press in problem.Presses.Where(p => run.Minutes.ContainsKey(p.Id)))
            if (Moved(problem, model, plan, run, press.Id) is { } moved)
                yield return moved;
        if (run.Release > 0)
            yield return Tried(problem with { Runs = [.. problem.Runs.Select(r => r.Id == run.Id ? r with { Release = 0 } : r)] }, model, plan, run.Id, "Artwork and material there at once.");
        WeekPress own = problem.Presses.First(p => p.Id == place.PressId);
        if (own.Open.Count > 0)
        {
            WeekPress through = own with { Open = WeekSpan.Without([new(own.Open[0].Start, own.Open[^1].End)], (own.Windows ?? []).Select(w => new WeekSpan(w.Start, w.End))) };
            yield return Tried(problem with { Presses = [.. problem.Presses.Select(p => p.Id == own.Id ? through : p)] }, model, plan, run.Id, Invariant($"{own.Id} worked without a break{(own.Windows is { Count: > 0 } ? " but for its maintenance" : "")}."));
        }

        foreach (WeekRemedy atBench in AtBenches(problem, model, plan, run.Id))
            yield return atBench;
        if (run.Steps.Count > 0)
            yield return Tried(problem with { Runs = [.. problem.Runs.Select(r => r.Id == run.Id ? r with { Steps = [] } : r)] }, model, plan, run.Id, "Steps after the press left out or given away.");
    }

    // The place on a press that makes the run least late, then the others; frozen runs stay first.
    private static WeekRemedy? Moved(WeekProblem problem, WeekModel? like, WeekPlan plan, WeekRun run, string pressId)
    {
        if (problem.Frozen.Any(f => f.RunId == run.Id))
            return null;
        WeekModel model = like is not null && problem.Holds.All(h => h.RunId != run.Id) ? like : new(problem with { Holds = [.. problem.Holds.Where(h => h.RunId != run.Id)] }, like);
        int moved = Array.FindIndex(model.Runs, r => r.Id == run.Id), to = problem.Presses.Select(p => p.Id).ToList().IndexOf(pressId);
        List<int>[] orders = WeekSearch.OrdersOf(model, plan.Order);
        foreach (List<int> order in orders)
            order.Remove(moved);
        int others = Others(plan, run.Id);
        int elsewhere = Enumerable.Range(0, orders.Length).Where(p => p != to).Sum(p => model.Late(p, orders[p], moved).Others);
        WeekRemedy? best = null;
        foreach (int at in Steps(model.Frozen[to].Length, orders[to].Count))
        {
            orders[to].Insert(at, moved);
            if (model.Keeps(to, orders[to]))
            {
                // Nobody is sooner ready than if nobody waited at benches: where that is no better already, the benches are not walked over.
                (int late, int more) = model.Late(to, orders[to], moved);
                if (model.HasQueue && (best is null || (late, more + elsewhere - others).CompareTo((best.LateThen, best.OthersLater)) < 0))
                    (late, more) = Less(model.Late(orders, moved), elsewhere);
                if (best is null || (late, more + elsewhere - others).CompareTo((best.LateThen, best.OthersLater)) < 0)
                {
                    string next = at + 1 < orders[to].Count ? Invariant($" before {model.Runs[orders[to][at + 1]].Id}") : " as the last";
                    best = new(Invariant($"On {pressId}{next}."), late, more + elsewhere - others);
                }
            }

            orders[to].RemoveAt(at);
        }

        return best;
    }

    private static (int OfRun, int Others) Less((int OfRun, int Others) late, int others) => (late.OfRun, late.Others - others);

    // All places of a short order, some thirty of a long one.
    private static IEnumerable<int> Steps(int first, int last)
    {
        int step = Math.Max(1, (last - first) / 30);
        for (int at = first; at <= last; at += step)
            yield return at;
    }

    private static WeekRemedy Tried(WeekProblem problem, WeekModel like, WeekPlan plan, string runId, string what)
    {
        WeekModel model = new(problem, like);
        (int late, int others) = model.Late(WeekSearch.OrdersOf(model, plan.Order), Array.FindIndex(model.Runs, r => r.Id == runId));
        return new(what, late, others - Others(plan, runId));
    }

    private static int Others(WeekPlan plan, string runId) => plan.Places.Where(p => p.RunId != runId).Sum(p => p.Late) + plan.Printed.Sum(p => p.Late);

    private static int Open(IReadOnlyList<WeekSpan> spans, int from, int to)
    {
        int known = spans.Count == 0 ? from : Math.Max(from, spans[^1].End);
        return spans.Sum(s => Math.Max(0, Math.Min(s.End, to) - Math.Max(s.Start, from))) + Math.Max(0, to - known);
    }

    private static string Count(int count, string one = "run", string more = "runs") => Invariant($"{count} {(count == 1 ? one : more)}");
}
