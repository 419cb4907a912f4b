using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Layout.Search;
using Laydown.Measures;
using Laydown.Plan.Week;
using Laydown.Shop.Week;

namespace Laydown.Cli.Week;

/// <summary><c>laydown week [--file FILE]</c>, <c>week put</c>, <c>week let</c>, <c>week lock</c>, <c>week unlock</c>, <c>week afresh</c>, <c>week back</c>.</summary>
internal static class WeekCommand
{
    public static Command Make(Shared shared)
    {
        Option<string?> file = new("--file") { Description = "Plan from this file alone, JSON as in schemas/week.schema.json, without a shop." };
        Option<long> iterations = new("--iterations") { Description = "Moves tried, with --file.", DefaultValueFactory = _ => WeekPlanner.UsualIterations };
        Option<bool> presses = new("--presses") { Description = "Tries late runs on other presses, too: each is planned anew for them." };
        Command command = new("week", "Puts the runs that wait onto presses and shifts: set-up after the run before, due dates, what is late and what would save it.")
        {
            file, iterations, presses, Put(shared), One(shared, "let", "Lets a run go where planning puts it.", (week, id, c) => week.UnpinAsync(id, c)), Lock(shared),
            One(shared, "unlock", "Takes every lock off that names a run.", (week, id, c) => week.UnlockAsync(id, c)), Afresh(shared), Back(shared),
        };
        command.SetAction((parsed, cancellation) => parsed.GetValue(file) is { } path
            ? FromFileAsync(shared.Answer(parsed), Path.GetFullPath(path), parsed.GetValue(iterations), cancellation)
            : shared.InShopAsync(parsed, async (shop, answer) => Tell(answer, await PlanAsync(shop.Week, answer, parsed.GetValue(presses), cancellation)), cancellation));
        return command;
    }

    private static async Task<Reading<WeekView>> PlanAsync(PlanWeek week, Answer answer, bool presses, CancellationToken cancellation)
    {
        Reading<WeekView> planned = await week.PlanAsync(cancellation);
        return presses && planned.IsTaken ? await week.WithPressesAsync(planned.Value, new TriedPresses(answer), cancellation) : planned;
    }

    private static Command Put(Shared shared)
    {
        Argument<string> id = new("run") { Description = "Id of the run." };
        Option<DateTime> at = new("--at") { Description = "When it is to begin by the shop's clock, such as 2026-11-27T10:00.", Required = true };
        Command command = new("put", "Puts a run at a time; the others are planned around it.") { id, at };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed, async (shop, answer) => Tell(answer, await shop.Week.PinAsync(parsed.GetRequiredValue(id), parsed.GetRequiredValue(at), cancellation)), cancellation));
        return command;
    }

    private static Command Lock(Shared shared)
    {
        Argument<string[]> ids = new("runs") { Description = "Ids of the runs, first to last.", Arity = ArgumentArity.OneOrMore };
        Command command = new("lock", "Locks the order of runs.") { ids };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed, async (shop, answer) => Tell(answer, await shop.Week.LockAsync(parsed.GetRequiredValue(ids), cancellation)), cancellation));
        return command;
    }

    private static Command Afresh(Shared shared)
    {
        Command command = new("afresh", "Takes a plan made from scratch in place of the one that stands, where it costs less.");
        command.SetAction((parsed, cancellation) => shared.InShopAsync(parsed, async (shop, answer) => Tell(answer, await shop.Week.AfreshAsync(cancellation)), cancellation));
        return command;
    }

    private static Command Back(Shared shared)
    {
        Command command = new("back", "Takes the last change by hand back.");
        command.SetAction((parsed, cancellation) => shared.InShopAsync(parsed, async (shop, answer) => Tell(answer, await shop.Week.BackAsync(cancellation)), cancellation));
        return command;
    }

    private static Command One(Shared shared, string name, string what, Func<PlanWeek, string, CancellationToken, Task<Reading<WeekView>>> action)
    {
        Argument<string> id = new("run") { Description = "Id of the run." };
        Command command = new(name, what) { id };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed, async (shop, answer) => Tell(answer, await action(shop.Week, parsed.GetRequiredValue(id), cancellation)), cancellation));
        return command;
    }

    internal static int Tell(Answer answer, Reading<WeekView> week)
    {
        if (!week.IsTaken)
            return answer.Fail(ExitCodes.Refused, "The week stays as it is.", week.Faults);
        if (answer.AsJson)
        {
            answer.Json("week", week.Value);
            return ExitCodes.Done;
        }

        answer.Table(["run", "press", "set-up", "start", "printed", "ready", "due", "late"], week.Value.Runs.Select(r => (IReadOnlyList<string>)
            [r.RunId, r.PressId, Invariant($"{r.SetUpMinutes} min"), Time(r.Start), Time(r.End), Time(r.Ready), Invariant($"{r.Due:yyyy-MM-dd}"), r.LateMinutes > 0 ? WeekReasons.Words(r.LateMinutes) : ""]));
        foreach (WeekRunView run in week.Value.Runs)
            answer.Line(Invariant($"{run.RunId}  set-up {run.SetUpMinutes} min: {run.SetUpBecause}{(run.TimeWords is { } words ? "; " + words : "")}"));
        foreach (WeekRunView run in week.Value.Runs.Where(r => r.CrewWords is not null))
            answer.Line(Invariant($"{run.RunId}  {run.CrewWords}"));
        foreach (WeekMaintenance window in week.Value.Maintenance ?? [])
            answer.Line(Invariant($"{window.PressId}  {Time(window.Start)} to {Time(window.End)}: {window.What}{(window.By is null ? "" : ", by " + window.By)}; {(window.RunsMayPause ? "a run may stand over it" : "no run stands over it")}."));
        if (week.Value.Care.Count > 0)
            answer.Table(["press", "care", "from", "to", "pauses"], week.Value.Care.Select(c => (IReadOnlyList<string>)[c.PressId, c.What, Time(c.Start), Time(c.End), c.RunId ?? ""]));
        foreach (WeekStopView stop in week.Value.Stops)
            answer.Line(Invariant($"{stop.PressId}  stands {Time(stop.Start)} to {Time(stop.End)}, longer than its lines may, {stop.Words}; the first is taken."));
        Benches(answer, week.Value);
        foreach (WeekWhy why in week.Value.Runs.Select(r => r.Why).OfType<WeekWhy>())
            Tell(answer, why);
        if (week.Value.Afresh is { } afresh)
            answer.Line(Invariant($"{afresh.Words} week afresh takes it."));
        answer.Line(Invariant($"{week.Value.Runs.Count} runs, {week.Value.LateRuns} late, {WeekReasons.Words(week.Value.SetUpMinutes)} of set-up."));
        return ExitCodes.Done;
    }

    private static void Benches(Answer answer, WeekView week)
    {
        foreach (WeekBenchView bench in week.Benches)
        {
            answer.Line(Invariant($"{bench.Name}, {bench.Places} {(bench.Places == 1 ? "place" : "places")}: worked {WeekReasons.Words(bench.OpenMinutes)} up to the last step, {WeekReasons.Words(bench.BusyMinutes)} of that taken."));
            foreach (WeekVisitView visit in bench.Visits)
                answer.Line(Invariant($"  {visit.RunId}  {visit.Step}: {Time(visit.Start)} to {Time(visit.End)}{(bench.Places > 1 ? Invariant($", place {visit.Place}") : "")}{(visit.Behind.Count > 0 ? Invariant($"; there from {Time(visit.Come)}, after {string.Join(", ", visit.Behind)}") : "")}"));
        }

        foreach (WeekPrintedView printed in week.Printed)
            answer.Line(Invariant($"{printed.RunId}  printed {Time(printed.Printed)}, ready {Time(printed.Ready)}{(printed.LateMinutes > 0 ? ", " + WeekReasons.Words(printed.LateMinutes) + " late" : "")}"));
    }

    private static void Tell(Answer answer, WeekWhy why)
    {
        answer.Line(Invariant($"{why.RunId} is {WeekReasons.Words(why.Late)} late. {string.Join(" ", why.Because)}"));
        foreach (WeekRemedy remedy in why.Remedies)
            answer.Line(Invariant($"  {remedy.What} Then {(remedy.LateThen == 0 ? "in time" : WeekReasons.Words(remedy.LateThen) + " late")}{(remedy.OthersLater > 0 ? Invariant($", others {WeekReasons.Words(remedy.OthersLater)} later") : "")}."));
    }

    private static async Task<int> FromFileAsync(Answer answer, string path, long iterations, CancellationToken cancellation)
    {
        await Task.Yield();
        Reading<WeekProblem> problem = Wiring.WeekFiles().Week(path);
        if (!problem.IsTaken)
            return answer.Fail(ExitCodes.Refused, "The week cannot be planned.", problem.Faults);
        WeekPlan plan = WeekPlanner.Solve(problem.Value, new SearchRules(1, Math.Max(0, iterations)), null, null, cancellation);
        IReadOnlyList<WeekWhy> why = WeekReasons.Of(problem.Value, plan);
        if (answer.AsJson)
        {
            answer.Json("week-plan", new { plan, why });
            return ExitCodes.Done;
        }

        answer.Table(["run", "press", "set-up from", "start", "end", "ready", "late"], plan.Places.Select(p => (IReadOnlyList<string>)
            [p.RunId, p.PressId, Invariant($"{p.SetUpStart}"), Invariant($"{p.Start}"), Invariant($"{p.End}"), Invariant($"{p.Ready}"), Invariant($"{p.Late}")]));
        if (plan.Care.Count > 0)
            answer.Table(["press", "care", "from", "to", "pauses"], plan.Care.Select(c => (IReadOnlyList<string>)[c.PressId, c.What, Invariant($"{c.Start}"), Invariant($"{c.End}"), c.RunId ?? ""]));
        if (plan.Visits.Count > 0)
            answer.Table(["run", "bench", "place", "step", "comes", "start", "end"], plan.Visits.Select(v => (IReadOnlyList<string>)
                [v.RunId, v.BenchId, Invariant($"{v.Place + 1}"), v.Step, Invariant($"{v.Come}"), Invariant($"{v.Start}"), Invariant($"{v.End}")]));
        foreach (WeekWhy one in why)
            Tell(answer, one);
        return ExitCodes.Done;
    }

    private static string Time(DateTimeOffset at) => Invariant($"{at:ddd dd HH:mm}");
}
