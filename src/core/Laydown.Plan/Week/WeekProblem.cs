namespace Laydown.Plan.Week;

/// <summary>Runs to be put on presses in order.</summary>
/// <param name="Presses">The presses; at least one.</param>
/// <param name="Runs">The runs.</param>
/// <param name="Changes">Minutes and money between two runs.</param>
/// <param name="FinishingOpen">When finishing is worked; empty for always.</param>
/// <param name="Frozen">Runs that stay first on their press in the order told: what is to begin soon is not moved.</param>
/// <param name="Holds">Runs put by hand.</param>
/// <param name="Orders">Chains of runs whose order is locked: on the same press none comes before one that stands earlier in its chain.</param>
/// <param name="SetUpWeight">What a minute of set-up costs, in the units of a run's weight.</param>
/// <param name="Benches">Benches at which steps after the press are done; null for none.</param>
/// <param name="Printed">Runs that are printed and still take room at benches; null for none.</param>
public sealed record WeekProblem(
    IReadOnlyList<WeekPress> Presses, IReadOnlyList<WeekRun> Runs, ChangeRates Changes, IReadOnlyList<WeekSpan> FinishingOpen, IReadOnlyList<WeekHold> Frozen,
    IReadOnlyList<WeekHold> Holds, IReadOnlyList<IReadOnlyList<string>> Orders, int SetUpWeight = 1, IReadOnlyList<WeekBench>? Benches = null,
    IReadOnlyList<WeekPrinted>? Printed = null)
{
    /// <summary>What is wrong with it, in sentences; empty where it can be planned.</summary>
    public IReadOnlyList<string> Faults()
    {
        HashSet<string> presses = [.. Presses.Select(p => p.Id)], runs = [.. Runs.Select(r => r.Id)];
        return
        [
            .. Presses.Count == 0 ? ["Presses: found none; wanted one at least."] : Array.Empty<string>(),
            .. runs.Count < Runs.Count ? ["Runs: found an id twice; wanted each once."] : Array.Empty<string>(),
            .. Presses.Where(p => p.Open.Any(s => s.End <= s.Start) || p.Open.Zip(p.Open.Skip(1)).Any(z => z.Second.Start < z.First.End))
                .Select(p => Invariant($"Press {p.Id}: found open spans that end before they start or overlap; wanted them sorted and apart.")),
            .. Presses.SelectMany(p => (p.Windows ?? []).Where(w => w.End <= w.Start || p.Open.Any(s => s.Start < w.End && w.Start < s.End)).Select(w =>
                Invariant($"Press {p.Id}: found a window '{w.What}' that ends before it starts or lies in open time; wanted it outside of that."))),
            .. Runs.Where(r => !r.Minutes.Keys.Any(presses.Contains)).Select(r => Invariant($"Run {r.Id}: found no press that can print it; wanted one of {string.Join(", ", Presses.Select(p => p.Id))}.")),
            .. Runs.Where(r => r.Minutes.Values.Any(m => m < 0) || r.Weight is < 0 or > 1000 || r.Steps.Any(s => s.Minutes < 0))
                .Select(r => Invariant($"Run {r.Id}: found minutes or a weight out of range; wanted minutes of 0 or more and a weight of 0 to 1000.")),
            .. Frozen.Concat(Holds).Where(h => Runs.FirstOrDefault(r => r.Id == h.RunId)?.Minutes.ContainsKey(h.PressId) != true || !presses.Contains(h.PressId))
                .Select(h => Invariant($"Run {h.RunId} on press {h.PressId}: found no such run, or a press that cannot print it.")),
            .. BenchFaults(runs),
            .. Presses.SelectMany(CareFaults),
            .. Runs.Where(r => r.Uses?.Values.Any(u => u is not >= 0 or > 1e6) == true).Select(r => Invariant($"Run {r.Id}: found a share of use out of range; wanted 0 or more.")),
            .. Orders.SelectMany(o => o).Where(id => !runs.Contains(id)).Select(id => Invariant($"Locked order: found run {id}, which is not in the plan.")),
        ];
    }

    private static IEnumerable<string> CareFaults(WeekPress press)
    {
        IReadOnlyList<WeekCare> care = press.Care ?? [];
        foreach (WeekCare one in care.Where((c, i) => c.Minutes < 1 || c.EveryMinutes < 0 || c.Last > 0 || c.Used is not (>= -1e6 and <= 1e6) || HasNoShare(c) || care.Take(i).Any(o => o.Id == c.Id)))
            yield return Invariant($"Press {press.Id}, care {one.Id}: found an id twice, or minutes, an interval, a last time or a share out of range; wanted each once, minutes of 1 or more, an interval of 0 or more, a last time of 0 or less, shares of 0 or more.");
        if (press.Stand is { } stand && (stand.ShortRunMinutes < 1 || stand.LastUsed > 0 || stand.Lines.Any(l => l.LimitMinutes < 1 || l.FillMinutes is not (>= 0 and < 1e6) || l.BackMinutes is not (>= 0 and < 1e6) || l.StoreCents < 0) || stand.ShortRunCents < 0 || stand.LabourCentsPerHour < 0 || stand.PressCentsPerHour < 0 || stand.VisitMinutes is not (>= 0 and < 1e6)))
            yield return Invariant($"Press {press.Id}, stand: found minutes or cents out of range or a last use after the start; wanted a short run and limits of 1 min or more, minutes and cents of 0 or more, a last use of 0 or less.");
    }

    private static bool HasNoShare(WeekCare care) =>
        care.Whole is not (>= 0 and <= 1e6) || care.Room is not (>= 1 and <= 1e6) || care.Adds?.Values.Any(a => a is not (>= 0 and <= 1e6)) == true;

    private IEnumerable<string> BenchFaults(HashSet<string> runs)
    {
        IReadOnlyList<WeekBench> benches = Benches ?? [];
        HashSet<string> ids = [.. benches.Select(b => b.Id)];
        if (ids.Count < benches.Count)
            yield return "Benches: found an id twice; wanted each once.";
        foreach (WeekBench bench in benches.Where(b => b.Places.Count == 0))
            yield return Invariant($"Bench {bench.Id}: found no place; wanted one at least.");
        foreach (WeekBench bench in benches.Where(b => b.Places.Any(p => p.Any(s => s.End <= s.Start) || p.Zip(p.Skip(1)).Any(z => z.Second.Start < z.First.End))))
            yield return Invariant($"Bench {bench.Id}: found open spans that end before they start or overlap; wanted them sorted and apart.");
        foreach ((string id, WeekStep step) in Runs.SelectMany(r => r.Steps.Select(s => (r.Id, s))).Concat((Printed ?? []).SelectMany(p => p.Steps.Select(s => (p.RunId, s)))))
            if (step.BenchId is { } wanted && !ids.Contains(wanted))
                yield return Invariant($"Run {id}, step {step.Name}: found bench {wanted}, which is not in the plan; wanted {(ids.Count == 0 ? "no bench" : "one of " + string.Join(", ", ids))}.");
        foreach (WeekPrinted printed in (Printed ?? []).Where(p => runs.Contains(p.RunId) || p.Weight is < 0 or > 1000 || p.Steps.Any(s => s.Minutes < 0)))
            yield return Invariant($"Printed run {printed.RunId}: found a run that is to be planned, too, or minutes or a weight out of range; wanted another run, minutes of 0 or more and a weight of 0 to 1000.");
    }
}
