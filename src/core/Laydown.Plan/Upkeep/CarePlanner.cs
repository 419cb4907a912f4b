using Laydown.Plan.Calendar;
using Laydown.Press.Machines;

namespace Laydown.Plan.Upkeep;

/// <summary>Says when care tasks are due and puts each between runs and into a shift where that can be.</summary>
/// <remarks>
/// Due is the first instant at which one of a rule's intervals is full. Within a run the task moves to the last border before it, or, where the run alone is longer than the interval, pauses the run.
/// Care that the week laid stands as it was laid; from its end on the rest is planned here.
/// Outside the shifts a task that matters only in use waits for the next shift; one that is due while the press stands moves to the last hour in which somebody is there, or is told as late.
/// </remarks>
internal sealed class CarePlanner
{
    private const int MostTasks = 20_000;
    private const string NeverDone = "nothing is written down of the last time";

    private readonly UpkeepRequest request;
    private readonly OpenTimes open;
    private readonly PressUse[] uses;
    private readonly IReadOnlyList<OpenSpan> shifts;
    private readonly DateTimeOffset[] borders;
    private readonly DateTimeOffset start;
    private readonly ILookup<string, LaidTask> laid;

    public CarePlanner(UpkeepRequest request, OpenTimes open)
    {
        (this.request, this.open) = (request, open);
        start = request.Laid?.Until > request.From ? request.Laid.Until : request.From;
        laid = (request.Laid?.Tasks ?? []).Where(t => t.RuleId is not null && t.Start < request.To).ToLookup(t => t.RuleId!, StringComparer.Ordinal);
        uses = [.. request.Uses.Where(u => u.End > request.State.At).OrderBy(u => u.Start)];
        shifts = open.Between(request.From, request.To.AddDays(14), request.Press.Id);
        borders = [.. uses.SelectMany(u => (DateTimeOffset[])[u.Start, u.End]).Concat(shifts.SelectMany(s => (DateTimeOffset[])[s.Start, s.End]))
            .Where(b => b >= start && !Array.Exists(uses, u => u.Start < b && b < u.End)).Distinct().Order()];
    }

    /// <summary>Every task from the start of the time planned to its end, earliest first.</summary>
    public IReadOnlyList<CareTask> Tasks() => [.. request.Care.Rules.SelectMany(Tasks).OrderBy(t => t.At).ThenBy(t => t.RuleId, StringComparer.Ordinal)];

    private IEnumerable<CareTask> Tasks(CareRule rule)
    {
        CareCounter? counter = request.State.Counters.FirstOrDefault(c => c.RuleId == rule.Id);
        Since since = new(counter?.LastDone ?? request.State.At, counter?.PrintHours ?? 0, counter?.Ml ?? 0);
        bool unknown = counter is null && IsFrequent(rule);
        foreach (LaidTask task in laid[rule.Id])
        {
            yield return Laid(rule, task, unknown);
            (since, unknown) = (new(task.Start, 0, 0), false);
        }

        if (unknown && Place(rule, start, start) is { } first && first.At < request.To)
        {
            yield return Task(rule, start, first, NeverDone);
            since = new(first.At, 0, 0);
        }

        for (int i = 0; i < MostTasks && Due(rule, since) is { } due && due.At < request.To; i++)
        {
            Placed placed = Place(rule, due.At, since.At);
            if (placed.At >= request.To)
                yield break;
            yield return Task(rule, due.At, placed, due.Because);
            since = new(placed.At, 0, 0);
        }
    }

    // What is not written down is done at once where it is due daily or by hours; longer intervals begin with the reading.
    private static bool IsFrequent(CareRule rule) => rule.EveryDays is 1 || rule.EveryHours <= 24 || rule.EveryPrintHours <= 8;

    private (DateTimeOffset At, string Because)? Due(CareRule rule, Since since)
    {
        List<(DateTimeOffset At, string Because)> due = [];
        if (rule.EveryHours is { } hours)
            due.Add((since.At.AddHours(hours), Hours(hours)));
        if (rule.EveryDays is { } days)
            due.Add((SameTime(since.At, days), Days(days)));
        if (rule.EveryPrintHours is { } print && Reached(since.At, print - since.PrintHours, u => u.Hours, _ => 0) is { } printed)
            due.Add((printed, Printed(print)));
        if (rule.EveryMl is { } ml && Reached(since.At, ml - since.Ml, u => Inks(u, rule).Sum(i => i.PrintedMl), u => Inks(u, rule).Sum(i => i.SetUpMl)) is { } drawn)
            due.Add((drawn, Drawn(ml)));
        return due.Count == 0 ? null : due.MinBy(d => d.At);
    }

    private DateTimeOffset SameTime(DateTimeOffset at, int days)
    {
        DateTimeOffset local = open.At(at);
        return open.At(DateOnly.FromDateTime(local.Date).AddDays(days), TimeOnly.FromTimeSpan(local.TimeOfDay));
    }

    private static IEnumerable<TankUse> Inks(PressUse use, CareRule rule) => use.Inks.Where(i => rule.TankId is null || i.TankId == rule.TankId);

    /// <summary>When an amount that grows evenly in each use, with a part at its start, is full.</summary>
    private DateTimeOffset? Reached(DateTimeOffset after, double amount, Func<PressUse, double> evenly, Func<PressUse, double> atStart)
    {
        DateTimeOffset from = after > request.State.At ? after : request.State.At;
        if (amount <= 0)
            return from;
        foreach (PressUse use in uses.Where(u => u.End > from))
        {
            double whole = evenly(use), begun = use.Start >= from ? atStart(use) : 0;
            DateTimeOffset start = use.Start > from ? use.Start : from;
            if (amount <= begun)
                return start;
            amount -= begun;
            double rest = whole * (use.End - start).TotalHours / use.Hours;
            if (amount <= rest)
                return start.AddHours((use.End - start).TotalHours * amount / rest);
            amount -= rest;
        }

        return null;
    }

    private Placed Place(CareRule rule, DateTimeOffset due, DateTimeOffset last)
    {
        if (due <= start)
            return NextThere(start, rule.WhileIdle ? due : null);
        PressUse? use = Array.Find(uses, u => u.Start < due && due < u.End);
        DateTimeOffset? before = LastBorder(last, due);
        if (use is not null)
            return before is { } border ? new(border, null, 0) : new(due, use.RunId, 0);
        if (IsThere(due))
            return new(due, null, 0);
        return rule.WhileIdle && before is { } earlier ? new(earlier, null, 0) : NextThere(due, rule.WhileIdle ? due : null);
    }

    private DateTimeOffset? LastBorder(DateTimeOffset last, DateTimeOffset due)
    {
        int i = Array.BinarySearch(borders, due);
        i = i >= 0 ? i : ~i - 1;
        return i >= 0 && borders[i] > last ? borders[i] : null;
    }

    private bool IsThere(DateTimeOffset at) => shifts.Any(s => s.Start <= at && at <= s.End) || Array.Exists(uses, u => u.Start <= at && at <= u.End);

    // The next instant somebody is there and the press does not print.
    private Placed NextThere(DateTimeOffset at, DateTimeOffset? lateAfter)
    {
        DateTimeOffset next = IsThere(at) ? at : borders.Where(b => b > at).DefaultIfEmpty(DateTimeOffset.MaxValue).First();
        if (Array.Find(uses, u => u.Start < next && next < u.End) is { } use)
            return new(next, use.RunId, lateAfter is { } d ? (next - d).TotalHours : 0);
        return new(next, null, lateAfter is { } due ? (next - due).TotalHours : 0);
    }

    private CareTask Task(CareRule rule, DateTimeOffset due, Placed placed, string because) => new(
        rule.Id, rule.Kind, rule.Name, open.At(due), open.At(placed.At), rule.Minutes, rule.By, rule.TankId, placed.RunId, placed.LateHours, because, rule.Source, CareCautions.Of(rule.Kind));

    // As the week laid it; whichever of hours and ink fills more of its interval is not told apart there.
    private CareTask Laid(CareRule rule, LaidTask task, bool unknown)
    {
        string because = unknown ? NeverDone
            : task.ByUse ? string.Join(", or ", new[] { rule.EveryPrintHours is { } print ? Printed(print) : null, rule.EveryMl is { } ml ? Drawn(ml) : null }.OfType<string>())
            : rule.EveryHours is { } hours && !(rule.EveryDays * 24 <= hours) ? Hours(hours) : Days(rule.EveryDays ?? 0);
        double late = rule.WhileIdle ? Math.Max(0, (task.Start - task.Due).TotalHours) : 0;
        return Task(rule, task.Due, new(task.Start, task.RunId, late), because) with { Minutes = (task.End - task.Start).TotalMinutes };
    }

    private static string Hours(double hours) => Invariant($"{hours:0.##} h after the last time");

    private static string Days(int days) => Invariant($"{days} {(days == 1 ? "day" : "days")} after the last time");

    private static string Printed(double hours) => Invariant($"{hours:0.##} h of printing since the last time");

    private static string Drawn(double ml) => Invariant($"{ml:0} ml of ink since the last time");

    private sealed record Since(DateTimeOffset At, double PrintHours, double Ml);

    private sealed record Placed(DateTimeOffset At, string? RunId, double LateHours);
}
