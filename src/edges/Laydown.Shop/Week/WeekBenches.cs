using Laydown.Plan.Week;

namespace Laydown.Shop.Week;

/// <summary>What happens at the benches, with the shop's clock.</summary>
internal static class WeekBenches
{
    /// <summary>Every bench of the week; what was done there before the week began is left out.</summary>
    public static IReadOnlyList<WeekBenchView> Of(WeekDesk desk, WeekPlan plan) => [.. (desk.Problem.Benches ?? []).Select(b => Bench(desk, b, [.. plan.Visits.Where(v => v.BenchId == b.Id)]))];

    private static WeekBenchView Bench(WeekDesk desk, WeekBench bench, IReadOnlyList<WeekVisit> visits)
    {
        WeekVisit[] shown = [.. visits.Where(v => v.End > 0)];
        int last = shown.Select(v => v.End).DefaultIfEmpty(0).Max();
        int open = bench.Places.Sum(p => p.Sum(s => Math.Max(0, Math.Min(s.End, last) - Math.Max(s.Start, 0))));
        return new(bench.Id, bench.Called, bench.Places.Count, open, shown.Sum(v => v.Parts.Sum(s => Math.Max(0, s.End - Math.Max(s.Start, 0)))), [.. shown.Select(v => new WeekVisitView(
            v.RunId, v.Step, v.Place + 1, desk.InstantOf(v.Come), desk.InstantOf(v.Start), desk.InstantOf(v.End),
            v.Start == v.Come ? [] : [.. visits.Where(o => o.RunId != v.RunId && o.Start < v.Start && o.End > v.Come).Select(o => o.RunId).Distinct(StringComparer.Ordinal)]))]);
    }
}
