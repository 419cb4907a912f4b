using Laydown.Measures;
using Laydown.Plan.Calendar;
using Laydown.Plan.Costs;
using Laydown.Press.Inks;
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

    /// <summary>Every stop longer than the limit of one of the lines, earliest first.</summary>
    public IReadOnlyList<LongStop> Stops() => [.. Idle().Select(Stop).OfType<LongStop>()];

    /// <summary>The spans between uses from the last use before the time planned to its end; the last one to the next shift after that.</summary>
    public IReadOnlyList<IdleSpan> Idle()
    {
        DateTimeOffset last = request.State.LastUsed ?? request.State.At;
        return IdleSpans.Between(last, NextShift(), request.Uses.Where(u => u.End > last).Select(u => (u.Start, u.End)));
    }

    // The end of the time planned is no use of the press: over a weekend or holidays it goes on standing.
    private DateTimeOffset NextShift()
    {
        DateTimeOffset farthest = request.To.AddDays(DaysAhead);
        DateTimeOffset next = open.Between(request.To, farthest, request.Press.Id).Select(s => s.Start).DefaultIfEmpty(farthest).Min();
        return next > request.To ? next : request.To;
    }

    private LongStop? Stop(IdleSpan idle)
    {
        List<StorageLine> lines = [.. request.Press.Channels.Select(c => Line(c, idle))];
        List<StorageLine> needing = [.. lines.Where(l => idle.Hours > l.LimitHours)];
        if (needing.Count == 0)
            return null;
        IReadOnlyList<OpenSpan> shifts = open.Between(idle.Start.AddDays(-1), idle.End.AddDays(1), request.Press.Id);
        List<LongStopOption> options = [Option("Storage fluid", idle, lines, needing, [], shifts)];

        // One way for each limit: lines with a shorter one are stored, short runs keep the others alive.
        foreach (double limit in needing.Select(l => l.LimitHours!.Value).Distinct().Order().Where(l => l * 60 > rules.ShortRunMinutes))
        {
            List<StorageLine> stored = [.. needing.Where(l => l.LimitHours < limit)];
            IReadOnlyList<ShortRun> runs = ShortRunTimes.Cheapest(idle, limit, rules.ShortRunMinutes, shifts, (RunCost(true).Cents, RunCost(false).Cents));
            options.Add(Option(stored.Count == 0 ? "Short runs" : "Short runs, other lines stored", idle, lines, stored, runs, shifts));
        }

        return new(open.At(idle.Start), open.At(idle.End), idle.Hours, needing.Min(l => l.LimitHours!.Value), [.. options.OrderBy(o => o.Cost.Cents)],
            Before(needing), After(), CareCautions.OfLongStop(), rules.Source)
        { NothingAfter = request.Uses.All(u => u.Start < idle.End) };
    }

    private StorageLine Line(Channel channel, IdleSpan idle)
    {
        bool circulates = request.Press.Tanks.FirstOrDefault(t => t.Id == channel.TankId)?.Circulates == true;
        double? limit = circulates ? null : channel.Role == InkRole.White ? Math.Min(rules.WhiteLimitHours, rules.LimitHours) : rules.LimitHours;
        return !(idle.Hours > limit)
            ? new(channel.Id, channel.TankId, channel.Role, limit, 0, 0, 0, 0, circulates ? "keeps circulating: the press stays on" : "stands with ink")
            : new(channel.Id, channel.TankId, channel.Role, limit, rules.FluidMlPerLine, rules.FillMinutesPerLine, rules.BackMinutesPerLine, rules.InkLostMlPerLine, "filled with storage fluid");
    }

    private LongStopOption Option(
        string name, IdleSpan idle, List<StorageLine> lines, List<StorageLine> stored, IReadOnlyList<ShortRun> runs, IReadOnlyList<OpenSpan> shifts)
    {
        List<StorageLine> shown = [.. lines.Select(l => l.FluidMl == 0 || stored.Contains(l) ? l : l with { FluidMl = 0, FillMinutes = 0, BackMinutes = 0, InkLostMl = 0, What = "kept alive by short runs" })];
        double fill = stored.Sum(l => l.FillMinutes), back = stored.Sum(l => l.BackMinutes);

        // Back again before the next run where a shift has room for it; else the run waits.
        DateTimeOffset backAt = idle.End.AddMinutes(-back);
        bool fits = back == 0 || (backAt >= idle.Start.AddMinutes(fill) && shifts.Any(s => s.Start <= backAt && idle.End <= s.End));
        if (!fits)
            backAt = idle.End;
        List<CostLine> costs = [.. StorageCosts(stored, idle, backAt, fill, back, shifts), .. RunCosts(runs)];
        double inShifts = Overlap(shifts, idle.Start, idle.Start.AddMinutes(fill)) + Overlap(shifts, backAt, backAt.AddMinutes(back));
        return new(name, [.. Timed(shown, idle.Start, backAt)], [.. runs.Select(r => r with { At = open.At(r.At), End = open.At(r.End) })], stored.Count > 0 ? open.At(idle.Start) : null, stored.Count > 0 ? open.At(backAt) : null,
            open.At(fits ? idle.End : idle.End.AddMinutes(back)), fits ? 0 : back, costs, Money.Sum(costs.Select(c => c.Amount)))
        { OutsideMinutes = Math.Max(0, fill + back - inShifts) };
    }

    // One pair of hands: one line after the other, in the order of the press, both ways.
    private IEnumerable<StorageLine> Timed(IEnumerable<StorageLine> lines, DateTimeOffset fillAt, DateTimeOffset backAt)
    {
        foreach (StorageLine line in lines)
        {
            yield return line.FluidMl > 0 || line.FillMinutes > 0 || line.BackMinutes > 0 ? line with { FillAt = open.At(fillAt), BackAt = open.At(backAt) } : line;
            (fillAt, backAt) = (fillAt.AddMinutes(line.FillMinutes), backAt.AddMinutes(line.BackMinutes));
        }
    }

    private IEnumerable<CostLine> StorageCosts(List<StorageLine> stored, IdleSpan idle, DateTimeOffset backAt, double fill, double back, IReadOnlyList<OpenSpan> shifts)
    {
        if (stored.Count == 0)
            yield break;
        double fluid = stored.Sum(l => l.FluidMl);
        Money perLitre = rules.FluidPerLitre ?? default;
        yield return new("Storage fluid", PerLitre(perLitre, fluid), Invariant($"{stored.Count} lines × {rules.FluidMlPerLine:0.#} ml × {perLitre}/l"), null);
        yield return new("Ink lost", Money.Sum(stored.Select(l => PerLitre(PriceOf(l.Role), l.InkLostMl))), Invariant($"{stored.Count} lines × {rules.InkLostMlPerLine:0.#} ml at the price of each ink"), null);
        yield return Labour(fill + back, Invariant($"{stored.Count} lines × ({rules.FillMinutesPerLine:0.#} + {rules.BackMinutesPerLine:0.#}) min"));
        double taken = Overlap(shifts, idle.Start, idle.Start.AddMinutes(fill)) + Overlap(shifts, backAt, backAt.AddMinutes(back));
        yield return PressTime(taken, Invariant($"{taken:0} min of it within shifts"));
    }

    private IEnumerable<CostLine> RunCosts(IReadOnlyList<ShortRun> runs)
    {
        if (runs.Count == 0)
            yield break;
        int outside = runs.Count(r => !r.InShift), inside = runs.Count - outside;
        yield return new("Ink of short runs", new(runs.Count * RunInk().Cents), Invariant($"{runs.Count} × {request.Press.Channels.Count} lines × {rules.ShortRunInkMlPerLine:0.##} ml"), null);
        if (inside > 0)
        {
            yield return new("Work in shifts", new(inside * RunLabour(true).Amount.Cents), Invariant($"{inside} × {RunLabour(true).Because}"), null);
            yield return new("Press time", new(inside * RunPress().Amount.Cents), Invariant($"{inside} × {RunPress().Because}"), null);
        }

        if (outside > 0)
            yield return new("Visits outside shifts", new(outside * RunLabour(false).Amount.Cents), Invariant($"{outside} × {RunLabour(false).Because}"), null);
    }

    private Money RunCost(bool inShift) => RunInk() + RunLabour(inShift).Amount + (inShift ? RunPress().Amount : default);

    private Money RunInk() => Money.Sum(request.Press.Channels.Select(c => PerLitre(PriceOf(c.Role), rules.ShortRunInkMlPerLine)));

    private CostLine RunLabour(bool inShift) => inShift
        ? Labour(rules.ShortRunMinutes, Invariant($"{rules.ShortRunMinutes:0.#} min"))
        : Labour(rules.ShortRunMinutes + rules.VisitMinutes, Invariant($"({rules.ShortRunMinutes:0.#} + {rules.VisitMinutes:0.#}) min"));

    private CostLine RunPress() => PressTime(rules.ShortRunMinutes, Invariant($"{rules.ShortRunMinutes:0.#} min"));

    private CostLine Labour(double minutes, string because) =>
        new("Work", Money.FromUnits(request.Rates.LabourPerHour.Units * (decimal)minutes / 60m), Invariant($"{because} × {request.Rates.LabourPerHour}/h"), null);

    private CostLine PressTime(double minutes, string because) =>
        new("Press time", Money.FromUnits(request.Press.Costs.PerHour.Units * (decimal)minutes / 60m), Invariant($"{because} × {request.Press.Costs.PerHour}/h"), null);

    private Money PriceOf(InkRole role) => request.InkSet.Find(role)?.PricePerLitre ?? default;

    private static Money PerLitre(Money price, double ml) => Money.FromUnits(price.Units * (decimal)ml / 1000m);

    private static double Overlap(IReadOnlyList<OpenSpan> shifts, DateTimeOffset from, DateTimeOffset to) =>
        shifts.Sum(s => Math.Max(0, ((s.End < to ? s.End : to) - (s.Start > from ? s.Start : from)).TotalMinutes));

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
