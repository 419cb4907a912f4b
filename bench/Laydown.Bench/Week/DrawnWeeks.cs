using Laydown.Plan.Week;

namespace Laydown.Bench.Week;

/// <summary>Weeks drawn from seeds, invented: as many runs, stocks, layers and due times as a busy shop has.</summary>
internal static class DrawnWeeks
{
    private const int Day = 1440;

    /// <summary>Set-ups that cost time alone.</summary>
    internal static readonly ChangeRates TimeAlone = new(WhiteCents: 0, StockCents: 0);

    /// <summary>One press that is never shut, where only lateness counts: the same as jobs on one machine.</summary>
    internal static WeekProblem Open(int runs, int seed)
    {
        Random random = new(seed);
        return new([new("one", [new(0, 1_000_000)], null)], Runs(runs, 0.8 * 60 * runs, random, false, false), TimeAlone, [], [], [], [], SetUpWeight: 0);
    }

    /// <summary>The same as jobs on one machine.</summary>
    internal static SequenceProblem AsSequence(WeekProblem problem) => new(
        [.. problem.Runs.Select(r => new SequenceJob(r.Id, r.Minutes["one"], r.Due, r.Weight))], [.. problem.Runs.Select(r => TimeAlone.Minutes(null, r.Traits))],
        [.. problem.Runs.Select(a => (IReadOnlyList<int>)[.. problem.Runs.Select(b => TimeAlone.Minutes(a.Traits, b.Traits))])]);

    /// <summary>Presses worked ten hours of each day; with benches, every run is packed and half of them are cut before.</summary>
    internal static WeekProblem Shifts(int runs, int presses, int seed, bool benches)
    {
        Random random = new(seed);
        double all = runs * 55.0 / presses / 600 * Day;
        IReadOnlyList<WeekSpan> open = [.. Enumerable.Range(0, 40).Select(d => new WeekSpan(d * Day, (d * Day) + 600))];
        WeekPress[] of = [.. new[] { "one", "two" }.Take(presses).Select(id => new WeekPress(id, open, null))];
        WeekProblem problem = new(of, Runs(runs, 0.8 * all, random, presses == 2, benches), new(), open, [], [], []);
        return benches ? problem with { Benches = [new("cut", [open], "Cutting"), new("pack", [open, open], "Packing")] } : problem;
    }

    private static WeekRun[] Runs(int count, double span, Random random, bool two, bool benches) => [.. Enumerable.Range(0, count).Select(i =>
    {
        WeekTraits traits = new("s" + random.Next(4), random.Next(3) == 0, 3, "l" + random.Next(3), random.Next(2) == 0, "m" + random.Next(2), "a");
        int minutes = 10 + random.Next(80);
        Dictionary<string, int> on = new() { ["one"] = minutes };
        if (two)
            on["two"] = minutes + 10;
        WeekStep[] steps = benches ? [.. random.Next(2) == 0 ? [new WeekStep("Cut", 5 + random.Next(40), false, "cut")] : Array.Empty<WeekStep>(), new("Pack", 5 + random.Next(30), false, "pack")] : [];
        return new WeekRun(Invariant($"r{i}"), on, traits, two && random.Next(3) == 0 ? random.Next(Day) : 0, (int)(span * random.NextDouble()) + 200, 1 + random.Next(9), steps);
    })];
}
