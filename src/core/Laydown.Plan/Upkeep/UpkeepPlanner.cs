using Laydown.Measures;
using Laydown.Plan.Calendar;
using Laydown.Plan.Runs;
using Laydown.Press.Inks;
using Laydown.Press.Machines;

namespace Laydown.Plan.Upkeep;

/// <summary>Plans the upkeep of a press: care tasks, tank levels with top-ups, ink to order, long stops.</summary>
public static class UpkeepPlanner
{
    // A stop this much shorter than the limit is told: one late Friday or early Monday decides.
    private const double NearHours = 2;

    /// <summary>The plan, or every fault of what is asked.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="file">Where it came from, for faults.</param>
    public static Reading<UpkeepPlan> Plan(UpkeepRequest request, string file = "upkeep")
    {
        IReadOnlyList<InputFault> faults = UpkeepFaults.Of(request, file);
        if (faults.Count > 0)
            return Reading.Refused<UpkeepPlan>(faults);
        OpenTimes open = new(request.Calendar);
        IReadOnlyList<CareTask> care = new CarePlanner(request, open).Tasks();

        // Lots are given out once all top-ups are known, because tanks of one ink share a shelf.
        InkShelf shelf = new(request.Packs, at => DateOnly.FromDateTime(open.At(at).Date));
        IReadOnlyList<TankPlan> tanks = shelf.Fill([.. request.Press.Tanks.Select(t => Tank(request, t, care))]);
        IReadOnlyList<InkOrder> inks = shelf.Orders(tanks, request.Packs, request.Care.PackMl, request.Care.LeadDays, request.From, request.To);
        LongStopPlanner stops = new(request, open);
        IReadOnlyList<LongStop> longStops = stops.Stops();
        return Reading.Of(new UpkeepPlan(request.Press.Id, open.At(request.From), open.At(request.To), [.. tanks.Select(t => Local(t, open))], inks, care, longStops,
            [.. Warnings(request, open, tanks, inks, care), .. Near(stops.Idle(), request.Care.LongStop.LimitHours)],
            [.. request.Uses.OrderBy(u => u.Start).Select(u => u with { Start = open.At(u.Start), End = open.At(u.End) })],
            open.MaintenanceBetween(request.From, request.To, request.Press.Id)));
    }

    /// <summary>Ink of a tank: what colour it is by the first channel it feeds.</summary>
    public static InkRole RoleOf(PressDescription press, string tankId) => press.Channels.FirstOrDefault(c => c.TankId == tankId)?.Role ?? InkRole.Clear;

    /// <summary>What a top-up at the low mark pours of a tank: whole bottles as far as it finds room for them, else what fills it; ml.</summary>
    /// <param name="tank">The tank.</param>
    /// <param name="packMl">Ink in one bottle, ml, over 0.</param>
    public static double UsualTopUpMl(Tank tank, double packMl) => TankPlanner.UsualMl(tank, packMl);

    private static TankPlan Tank(UpkeepRequest request, Tank tank, IReadOnlyList<CareTask> care)
    {
        DateTimeOffset at = request.State.At;
        double level = request.State.Tanks.FirstOrDefault(t => t.TankId == tank.Id)?.LevelMl ?? tank.LevelMl;
        int lines = request.Press.Channels.Count(c => c.TankId == tank.Id);
        Dictionary<string, double> mlOf = request.Care.Rules.Where(r => r.TankId is null || r.TankId == tank.Id).ToDictionary(r => r.Id, r => r.InkMlPerLine * lines, StringComparer.Ordinal);
        IEnumerable<InkFlow> flows = request.Uses.Where(u => u.End > at && u.Start < request.To).SelectMany(u => Flows(u, tank.Id, at))
            .Concat(care.Where(c => mlOf.ContainsKey(c.RuleId)).Select(c => new InkFlow(c.At, c.At, mlOf[c.RuleId], c.InterruptsRun)));
        return TankPlanner.Plan(tank, RoleOf(request.Press, tank.Id), level, request.Care.PackMl, flows, at, request.To, request.Laid);
    }

    // Of a use that was going on when the press was read, only the rest is still to come.
    private static IEnumerable<InkFlow> Flows(PressUse use, string tankId, DateTimeOffset at)
    {
        foreach (TankUse ink in use.Inks.Where(i => i.TankId == tankId))
        {
            if (use.Start >= at)
                yield return new(use.Start, use.Start, ink.SetUpMl, use.RunId);
            DateTimeOffset start = use.Start > at ? use.Start : at;
            yield return new(start, use.End, ink.PrintedMl * (use.End - start).TotalHours / use.Hours, use.RunId);
        }
    }

    private static TankPlan Local(TankPlan tank, OpenTimes open) => tank with
    {
        Levels = [.. tank.Levels.Select(p => p with { At = open.At(p.At) })],
        TopUps = [.. tank.TopUps.Select(t => t with { At = open.At(t.At) })],
        Shortages = [.. tank.Shortages.Select(s => s with { LowAt = open.At(s.LowAt), DryAt = s.DryAt is { } dry ? open.At(dry) : null })],
    };

    private static IEnumerable<string> Warnings(
        UpkeepRequest request, OpenTimes open, IReadOnlyList<TankPlan> tanks, IReadOnlyList<InkOrder> inks, IReadOnlyList<CareTask> care)
    {
        foreach (TankShortage s in tanks.SelectMany(t => t.Shortages).OrderByDescending(s => s.MissingMl))
        {
            yield return s.DryAt is { } dry
                ? Invariant($"Tank {s.TankId} runs dry {open.At(dry):yyyy-MM-dd HH:mm}{InRun(s.RunId)}, {s.MissingMl:0} ml short: part the run and top up between the parts.")
                : Invariant($"Tank {s.TankId} falls under its low mark {open.At(s.LowAt):yyyy-MM-dd HH:mm}{InRun(s.RunId)} and cannot be topped up meanwhile: part the run, or watch the level.");
        }

        foreach (InkOrder order in inks.Where(i => i.Packs > 0))
            yield return Invariant($"{InkWords.Of(order.Role)}: {order.MissingMl:0} ml are missing on the shelf; order {order.Packs} by {order.OrderBy:yyyy-MM-dd}{(order.NeededOn?.AddDays(-request.Care.LeadDays) < order.OrderBy ? Invariant($", which is late: it is poured {order.NeededOn:yyyy-MM-dd}") : "")}.");
        DateOnly end = DateOnly.FromDateTime(open.At(request.To).Date);
        foreach (TankState read in request.State.Tanks.Where(t => t.Expires < end))
            yield return Invariant($"Ink in tank {read.TankId}, lot {read.Lot ?? "not written down"}, may be printed until {read.Expires:yyyy-MM-dd}, before the end of this plan.");
        foreach (InkOrder order in inks.Where(i => i.ExpiredMl > 0))
            yield return Invariant($"{InkWords.Of(order.Role)}: {order.ExpiredMl:0} ml on the shelf expire before {end:yyyy-MM-dd} without being poured.");
        foreach (CareTask task in care.Where(c => c.LateHours > 0.01))
            yield return Invariant($"{task.Name}: due {task.Due:yyyy-MM-dd HH:mm}, nobody is there before {task.At:yyyy-MM-dd HH:mm}, {task.LateHours:0.#} h late.");
        foreach (TopUp topUp in tanks.SelectMany(t => t.TopUps).Where(t => NewLot(request, t)).DistinctBy(t => t.TankId))
            yield return Invariant($"Tank {topUp.TankId} gets another lot {open.At(topUp.At):yyyy-MM-dd HH:mm}: print the check strip afterwards.");
    }

    private static bool NewLot(UpkeepRequest request, TopUp topUp) =>
        request.State.Tanks.FirstOrDefault(t => t.TankId == topUp.TankId)?.Lot is { } lot && topUp.Lots.Any(l => l.Lot != lot);

    private static string InRun(string? runId) => runId is null ? "" : Invariant($" in run {runId}");

    private static IEnumerable<string> Near(IReadOnlyList<IdleSpan> idle, double limit) => idle.Where(i => i.Hours <= limit && i.Hours > limit - NearHours)
        .Select(i => Invariant($"The stop from {i.Start:yyyy-MM-dd HH:mm} to {i.End:yyyy-MM-dd HH:mm} lasts {i.Hours:0.##} h; over {limit:0.##} h it needs storage fluid or a short run: a later start decides."));
}
