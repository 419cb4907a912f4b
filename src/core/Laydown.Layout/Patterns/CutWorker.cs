using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Patterns;

/// <summary>One thread of the search: takes some sheets of the best answer apart and cuts what they held anew, or starts from the root mix.</summary>
internal sealed class CutWorker
{
    private const int RootEvery = 16;
    private const int RootRounds = 4000;
    private const int Rounds = 60;
    private const int MostPool = 1200;
    private const int MostRuin = 12;

    private readonly RectProblem problem;
    private readonly CutShop shop;
    private readonly ColumnSearch columns;
    private readonly CutDive dive;
    private readonly Chance chance;
    private readonly int[] wanted;
    private readonly List<CutPattern> pool = [];
    private long turn;

    internal CutWorker(RectProblem problem, CutShop shop, int[] wanted, int seed)
    {
        (this.problem, this.shop, this.wanted) = (problem, shop, wanted);
        columns = new(shop);
        dive = new(columns, shop, new([.. problem.Stocks.Select(s => s.Cost)]));
        chance = new(seed);
    }

    /// <summary>Sheets there, by limited stock.</summary>
    internal int[] There => [.. shop.Limited.Select(s => problem.Stocks[s].Copies!.Value)];

    /// <summary>The first answer: sheet after sheet, pieces worth their area, each pattern as often as it can be cut.</summary>
    internal List<CutUse> First()
    {
        float[] worth = [.. problem.Pieces.Select(p => (float)p.Area)];
        int[] left = [.. wanted], there = There;
        List<CutUse> uses = [];
        while (left.Any(n => n > 0))
        {
            CutPattern? best = shop.Best(worth, left, there, s => 0.98 * problem.Stocks[s].Area).Select(b => b.Pattern)
                .Where(p => p.Counts.Any(n => n > 0)).MaxBy(p => Area(p) / Math.Max(p.Cost, 1e-9));
            if (best is null)
                break;
            int times = Enumerable.Range(0, left.Length).Where(p => best.Counts[p] > 0).Min(p => left[p] / best.Counts[p]);
            int limited = Array.IndexOf(shop.Limited, best.Stock);
            times = limited < 0 ? times : Math.Min(times, there[limited]);
            if (limited >= 0)
                there[limited] -= times;
            for (int p = 0; p < left.Length; p++)
                left[p] -= times * best.Counts[p];
            uses.Add(new(best, times));
        }

        return uses;
    }

    /// <summary>The mix for everything.</summary>
    internal CutMix Root(IEnumerable<CutPattern> start, CancellationToken stop)
    {
        pool.AddRange(start);
        return columns.Solve(wanted, There, pool, RootRounds, double.MaxValue, stop);
    }

    /// <summary>Takes the patterns of the root mix over.</summary>
    internal void Learn(CutMix root) => pool.AddRange(root.Uses.Select(u => u.Pattern));

    /// <summary>Tries once; the answer, or null where it is no as good as the one given.</summary>
    internal List<CutUse>? Try(IReadOnlyList<CutUse> best, CutScore score, CutMix root, CancellationToken stop)
    {
        Forget(root);
        List<CutUse> kept = turn++ % RootEvery == 0 ? OfRoot(root) : OfBest(best);
        int[] left = [.. wanted], there = There;
        double spent = 0;
        foreach (CutUse use in kept)
        {
            for (int p = 0; p < left.Length; p++)
                left[p] = Math.Max(0, left[p] - (use.Times * use.Pattern.Counts[p]));
            if (Array.IndexOf(shop.Limited, use.Pattern.Stock) is int limited and >= 0)
                there[limited] -= use.Times;
            spent += use.Times * use.Pattern.Cost;
        }

        double most = score.MissingArea > 0 ? double.MaxValue / 4 : score.Cost - spent;
        return there.Any(n => n < 0) || dive.Run(left, there, pool, most, Rounds, chance, stop) is not List<CutUse> more ? null : [.. kept, .. more];
    }

    /// <summary>Missing area, cost and layouts of an answer.</summary>
    internal CutScore Score(IReadOnlyList<CutUse> uses)
    {
        double missing = 0;
        for (int p = 0; p < wanted.Length; p++)
            missing += (double)problem.Pieces[p].Area * Math.Max(0, wanted[p] - uses.Sum(u => u.Times * u.Pattern.Counts[p]));
        return new(missing, uses.Sum(u => u.Times * u.Pattern.Cost), uses.Select(u => u.Pattern).Distinct().Count());
    }

    private double Area(CutPattern pattern)
    {
        double area = 0;
        for (int p = 0; p < wanted.Length; p++)
            area += pattern.Counts[p] * (double)problem.Pieces[p].Area;
        return area;
    }

    // What the root mix cuts whole times, a few less of some.
    private List<CutUse> OfRoot(CutMix root)
    {
        List<CutUse> kept = [];
        foreach ((CutPattern pattern, double times) in root.Uses)
            if ((int)(times + 1e-5) - (turn > 1 ? chance.Below(3) : 0) is int whole and > 0)
                kept.Add(new(pattern, whole));
        return kept;
    }

    // Sheets taken apart are chosen by chance, those with much waste rather than others.
    private List<CutUse> OfBest(IReadOnlyList<CutUse> best)
    {
        int[] times = [.. best.Select(u => u.Times)];
        double[] waste = [.. best.Select(u => 1.02 - (Area(u.Pattern) / problem.Stocks[u.Pattern.Stock].Area))];
        int sheets = Math.Min(times.Sum(), 2 + chance.Below(MostRuin - 1));
        for (int i = 0; i < sheets; i++)
        {
            (int choice, double most) = (-1, -1);
            for (int u = 0; u < times.Length; u++)
                if (times[u] > 0 && waste[u] * chance.Share() * chance.Share() is double s && s > most)
                    (choice, most) = (u, s);
            times[choice]--;
        }

        return [.. best.Select((u, i) => u with { Times = times[i] }).Where(u => u.Times > 0)];
    }

    private void Forget(CutMix root)
    {
        if (pool.Count <= MostPool)
            return;
        pool.RemoveRange(0, pool.Count / 2);
        Learn(root);
    }
}
