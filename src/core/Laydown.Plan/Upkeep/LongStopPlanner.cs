using Laydown.Measures;
using Laydown.Plan.Calendar;
using Laydown.Plan.Costs;
using Laydown.Press.Machines;

namespace Laydown.Plan.Upkeep;

/// <summary>Plans stops longer than the lines may stand: storage fluid per line, or short runs that avoid it, each with its cost.</summary>
/// <remarks>
/// A stop of exactly the limit needs nothing. A stop that no run ends lasts at least to the first shift in which somebody could print, even where that lies after the time planned. A line that circulates by itself is left alone while the press stays on. What to do when the press is used again, above all cleaning by hand before
/// any automatic cleaning: [Ballreich2020]. Limits and amounts are the press's own or common practice, no source.
/// </remarks>
internal sealed class LongStopPlanner(UpkeepRequest request, OpenTimes open)
{
    // Nobody plans for a shop that is closed longer than that.
    private const int DaysAhead = 90;

    private readonly LongStopRules rules = request.Care.LongStop;
    private readonly StopTerms terms = StopRules.TermsOf(request.Press, request.InkSet, request.Rates.LabourPerHour);

    /// <summary>Every stop longer than the limit of one of the lines, earliest first.</summary>
    public IReadOnlyList<LongStop> Stops() => [.. Decided().OrderBy(i => i.Start).Select(Stop).OfType<LongStop>()];

    /// <summary>The spans between uses from the last use before the time planned to its end; the last one to the next shift after that.</summary>
    public IReadOnlyList<IdleSpan> Idle()
    {
        DateTimeOffset last = request.State.LastUsed ?? request.State.At;
        return IdleSpans.Between(last, NextShift(), request.Uses.Where(u => u.End > last).Select(u => (u.Start, u.End)));
    }

    // The week's stops as it decided about them; beside them only what it leaves open: after its last run, and where a run is paused.
    private IEnumerable<IdleSpan> Decided()
    {
        if (request.Laid is not { } laid)
            return Idle();
        IdleSpan[] stops = [.. (laid.Stops ?? []).Where(s => s.Start < request.To && s.End > s.Start).Select(s => new IdleSpan(s.Start, s.End))];
        return stops.Concat(Idle().Where(i => !Array.Exists(stops, s => s.Start == i.Start) && (request.Uses.All(u => u.Start < i.End) || IsPause(i))));
    }

    private bool IsPause(IdleSpan idle) => request.Uses.FirstOrDefault(u => u.End == idle.Start)?.RunId is { } run && request.Uses.Any(u => u.RunId == run && u.Start == idle.End);

    // The end of the time planned is no use of the press: over a weekend or holidays it goes on standing.
    private DateTimeOffset NextShift()
    {
        DateTimeOffset farthest = request.To.AddDays(DaysAhead);
        DateTimeOffset next = open.Between(request.To, farthest, request.Press.Id).Select(s => s.Start).DefaultIfEmpty(farthest).Min();
        return next > request.To ? next : request.To;
    }

    private LongStop? Stop(IdleSpan idle)
    {
        IReadOnlyList<OpenSpan> shifts = Joined(open.Between(idle.Start.AddDays(-1), idle.End.AddDays(1), request.Press.Id));
        IReadOnlyList<StopWay> ways = StopWays.Of(terms, idle, shifts, request.From);
        if (ways.Count == 0)
            return null;
        List<StorageLine> lines = [.. request.Press.Channels.Select(c => Line(c, idle))];
        List<StorageLine> needing = [.. lines.Where(l => idle.Hours > l.LimitHours)];
        return new(open.At(idle.Start), open.At(idle.End), idle.Hours, needing.Min(l => l.LimitHours!.Value), [.. ways.Select(w => Option(w, idle, lines))],
            Before(needing), After(), CareCautions.OfLongStop(), rules.Source)
        { NothingAfter = request.Uses.All(u => u.Start < idle.End) };
    }

    // Where only the crew changes, the press is worked on.
    private static List<OpenSpan> Joined(IReadOnlyList<OpenSpan> shifts)
    {
        List<OpenSpan> joined = [];
        foreach (OpenSpan shift in shifts)
        {
            if (joined.Count > 0 && joined[^1].End == shift.Start)
                joined[^1] = joined[^1] with { End = shift.End };
            else
                joined.Add(shift);
        }

        return joined;
    }

    private StorageLine Line(Channel channel, IdleSpan idle)
    {
        bool circulates = request.Press.Tanks.FirstOrDefault(t => t.Id == channel.TankId)?.Circulates == true;
        double? limit = circulates ? null : StopRules.LimitHours(rules, channel.Role);
        return !(idle.Hours > limit)
            ? new(channel.Id, channel.TankId, channel.Role, limit, 0, 0, 0, 0, circulates ? "keeps circulating: the press stays on" : "stands with ink")
            : new(channel.Id, channel.TankId, channel.Role, limit, rules.FluidMlPerLine, rules.FillMinutesPerLine, rules.BackMinutesPerLine, rules.InkLostMlPerLine, "filled with storage fluid");
    }

    private LongStopOption Option(StopWay way, IdleSpan idle, List<StorageLine> lines)
    {
        IReadOnlyList<Channel> limited = StopRules.Limited(request.Press);
        HashSet<string> stored = [.. way.Stored.Select(l => limited[l].Id)];
        List<StorageLine> shown = [.. lines.Select(l => l.FluidMl == 0 && l.FillMinutes == 0 && l.BackMinutes == 0 || stored.Contains(l.ChannelId) ? l : l with { FluidMl = 0, FillMinutes = 0, BackMinutes = 0, InkLostMl = 0, What = "kept alive by short runs" })];
        List<CostLine> costs = [.. StorageCosts([.. lines.Where(l => stored.Contains(l.ChannelId))], way), .. RunCosts(way.ShortRuns)];
        bool any = stored.Count > 0;
        return new(way.Name, [.. Timed(shown, idle.Start, way.BackAt)], [.. way.ShortRuns.Select(r => r with { At = open.At(r.At), End = open.At(r.End) })], any ? open.At(idle.Start) : null, any ? open.At(way.BackAt) : null,
            open.At(way.ReadyAt), (way.ReadyAt - idle.End).TotalMinutes, costs, Money.Sum(costs.Select(c => c.Amount)))
        { OutsideMinutes = any ? Math.Max(0, Minutes(lines, stored, l => l.FillMinutes) + Minutes(lines, stored, l => l.BackMinutes) - way.ShiftMinutes) : 0 };
    }

    // Whole minutes, as the week lays them.
    private static double Minutes(IEnumerable<StorageLine> lines, HashSet<string> stored, Func<StorageLine, double> of) => Math.Ceiling(lines.Where(l => stored.Contains(l.ChannelId)).Sum(of) - 1e-9);

    // One pair of hands: one line after the other, in the order of the press, both ways.
    private IEnumerable<StorageLine> Timed(IEnumerable<StorageLine> lines, DateTimeOffset fillAt, DateTimeOffset backAt)
    {
        foreach (StorageLine line in lines)
        {
            yield return line.FluidMl > 0 || line.FillMinutes > 0 || line.BackMinutes > 0 ? line with { FillAt = open.At(fillAt), BackAt = open.At(backAt) } : line;
            (fillAt, backAt) = (fillAt.AddMinutes(line.FillMinutes), backAt.AddMinutes(line.BackMinutes));
        }
    }

    private IEnumerable<CostLine> StorageCosts(List<StorageLine> stored, StopWay way)
    {
        if (stored.Count == 0)
            yield break;
        HashSet<string> all = [.. stored.Select(l => l.ChannelId)];
        double minutes = Minutes(stored, all, l => l.FillMinutes) + Minutes(stored, all, l => l.BackMinutes);
        yield return new("Storage fluid", new(stored.Count * StopRules.Fluid(rules).Cents), Invariant($"{stored.Count} lines × {rules.FluidMlPerLine:0.#} ml × {rules.FluidPerLitre ?? default}/l"), null);
        yield return new("Ink lost", Money.Sum(stored.Select(l => StopRules.InkLost(rules, request.InkSet, l.Role))), Invariant($"{stored.Count} lines × {rules.InkLostMlPerLine:0.#} ml at the price of each ink"), null);
        yield return new("Work", terms.Labour(minutes), Invariant($"{stored.Count} lines × ({rules.FillMinutesPerLine:0.#} + {rules.BackMinutesPerLine:0.#}) min × {terms.LabourPerHour}/h"), null);
        yield return new("Press time", terms.Press(way.ShiftMinutes), Invariant($"{way.ShiftMinutes:0} min of it within shifts × {terms.PressPerHour}/h"), null);
    }

    private IEnumerable<CostLine> RunCosts(IReadOnlyList<ShortRun> runs)
    {
        if (runs.Count == 0)
            yield break;
        int outside = runs.Count(r => !r.InShift), inside = runs.Count - outside;
        yield return new("Ink of short runs", new(runs.Count * terms.ShortRunInkCents), Invariant($"{runs.Count} × {request.Press.Channels.Count} lines × {rules.ShortRunInkMlPerLine:0.##} ml"), null);
        if (inside > 0)
        {
            yield return new("Work in shifts", new(inside * terms.ShortRunLabour(true).Cents), Invariant($"{inside} × {terms.ShortRunMinutes} min × {terms.LabourPerHour}/h"), null);
            yield return new("Press time", new(inside * terms.Press(terms.ShortRunMinutes).Cents), Invariant($"{inside} × {terms.ShortRunMinutes} min × {terms.PressPerHour}/h"), null);
        }

        if (outside > 0)
            yield return new("Visits outside shifts", new(outside * terms.ShortRunLabour(false).Cents), Invariant($"{outside} × ({terms.ShortRunMinutes} + {terms.VisitMinutes:0.#}) min × {terms.LabourPerHour}/h"), null);
    }

    private static List<string> Before(List<StorageLine> needing) =>
    [
        "Print the nozzle pattern and keep it, so that the lines can be compared afterwards.",
        Invariant($"Either empty the lines {string.Join(", ", needing.Select(l => l.ChannelId))} and fill them with storage fluid, one after the other, or make sure of the short runs."),
        "Leave lines that circulate running: the press stays on, its heating as the maker's manual says.",
        "Clean wiper, caps and head edges by hand, cap the heads, close the cover against daylight, write the tank levels down.",
    ];

    private static List<string> After() =>
    [
        "Empty the waste tank; stir or circulate the inks, white first.",
        "Clean wiper, caps and head edges by hand before any automatic cleaning.",
        "Flush the storage fluid out line by line and fill with ink again, where lines were stored.",
        "Print the nozzle pattern; then a picture you know, and compare.",
    ];
}
