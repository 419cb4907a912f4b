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

    /// <summary>Presses shut from Friday evening to Monday, with the care a press usually needs and lines that may not stand for a weekend; figures invented.</summary>
    internal static WeekProblem WithCare(int runs, int seed)
    {
        WeekProblem plain = Shifts(runs, 2, seed, false);
        IReadOnlyList<WeekSpan> open = [.. Enumerable.Range(0, 60).Where(d => d % 7 < 5).Select(d => new WeekSpan(d * Day, (d * Day) + 600))];
        WeekCare[] care =
        [
            new("stop", "Stop devices", 3, Day, -900), new("nozzle", "Nozzle pattern", 4, Day, -900, 0.3), new("clean", "Clean heads", 12, 7 * Day, -2000, 0.4),
            new("waste", "Waste tank", 6, 14 * Day, -4000, 0.2), new("lamps", "Lamps", 20, 30 * Day, -9000), new("stir", "Stir white", 6, Day, -800, 0, WhileIdle: true),
            .. Enumerable.Range(0, 6).Select(t => new WeekCare(Invariant($"tank {t}"), "Top up", 5, 0, 0, 0.1 * t, Whole: 0.5)),
            .. Enumerable.Range(0, 6).Select(t => new WeekCare(Invariant($"filter {t}"), "Filter", 15, 180 * Day, -9000, 0.1 * t)),
        ];
        WeekStand stand = new([.. Enumerable.Range(0, 6).Select(l => new WeekLine(l == 0 ? 24 * 60 : 60 * 60, 4, 6, 900))], 12, 0, 250, 3000, 4000, 30);
        return plain with
        {
            Presses = [.. plain.Presses.Select(p => new WeekPress(p.Id, open, null, null, care, stand))],
            Runs = [.. plain.Runs.Select(r => r with { MayPause = true, Uses = UsesOf(r.Minutes["one"], care) })],
        };
    }

    // A nozzle pattern each 4 h of printing, cleaning each 16 h, a bottle each 16 h, a filter each 100 h.
    private static Dictionary<string, double> UsesOf(int minutes, IReadOnlyList<WeekCare> care) => care.ToDictionary(c => c.Id, c => minutes / 60.0 / c.Id[0] switch
    {
        'n' => 4.0,
        'c' => 16,
        't' => 32,
        'f' => 100,
        _ => double.PositiveInfinity,
    }, StringComparer.Ordinal);

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
