namespace Laydown.Layout.Patterns;

/// <summary>Column generation: prices of pieces from the mix of patterns known, the best sheet at those prices as a new pattern, until none pays. [GilmoreGomory1965]</summary>
internal sealed class ColumnSearch(CutShop shop)
{
    private const double Pays = 1e-6;
    private const double Clear = 1e-4;

    private readonly List<CutPattern> patterns = [];
    private int[] rowOf = [];
    private int[] wanted = [];

    /// <summary>The cheapest mix for what is wanted.</summary>
    /// <param name="copies">Copies wanted, by piece; 0 for none.</param>
    /// <param name="there">Sheets there, by limited stock.</param>
    /// <param name="pool">Patterns known; new ones are added.</param>
    /// <param name="rounds">Most rounds of new patterns.</param>
    /// <param name="enough">Ends where the bound is over this: no use to go on.</param>
    /// <param name="stop">Ends the search between rounds.</param>
    internal CutMix Solve(int[] copies, IReadOnlyList<int> there, List<CutPattern> pool, int rounds, double enough, CancellationToken stop)
    {
        wanted = copies;
        int[] asked = [.. Enumerable.Range(0, copies.Length).Where(p => copies[p] > 0)];
        rowOf = new int[copies.Length];
        Array.Fill(rowOf, -1);
        for (int r = 0; r < asked.Length; r++)
            rowOf[asked[r]] = r;
        CoverMaster master = new([.. asked.Select(p => copies[p])], there, shop.MostCost * 4);
        patterns.Clear();
        foreach (CutPattern pattern in pool)
            Add(master, pattern, asked.Length);
        return Rounds(master, asked, there, pool, rounds, enough, stop);
    }

    private CutMix Rounds(CoverMaster master, int[] asked, IReadOnlyList<int> there, List<CutPattern> pool, int rounds, double enough, CancellationToken stop)
    {
        float[] worth = new float[wanted.Length];
        double cost = master.Solve(), bound = 0;
        for (int round = 0; round < rounds && !stop.IsCancellationRequested; round++)
        {
            double value = 0;
            for (int r = 0; r < asked.Length; r++)
            {
                worth[asked[r]] = (float)Math.Max(0, master.Prices[r]);
                value += Math.Max(0, master.Prices[r]) * wanted[asked[r]];
            }

            (bool added, double ratio) = NewPatterns(master, worth, there, pool, asked.Length);
            bound = Math.Max(bound, value * ratio * (1 - 1e-6));
            if (!added || bound > enough)
                break;
            cost = master.Solve();
        }

        return new(cost, bound, [.. master.Uses().Select(u => (patterns[u.Column], u.Times))]);
    }

    // The prices shrunk by the ratio are such that no sheet is worth more than it costs: they give a bound.
    private (bool Added, double Ratio) NewPatterns(CoverMaster master, float[] worth, IReadOnlyList<int> there, List<CutPattern> pool, int asked)
    {
        bool added = false;
        double ratio = 1;
        double Needed(int stock) => (shop.Cost(stock) * (1 + Clear)) - (Array.IndexOf(shop.Limited, stock) is int l and >= 0 ? master.Prices[asked + l] : 0);
        foreach ((CutPattern pattern, double limit) in shop.Best(worth, wanted, there, Needed))
        {
            if (limit > pattern.Cost)
                ratio = Math.Min(ratio, pattern.Cost / limit);
            double gain = -pattern.Cost;
            for (int p = 0; p < wanted.Length; p++)
                if (rowOf[p] >= 0)
                    gain += Math.Min(pattern.Counts[p], wanted[p]) * master.Prices[rowOf[p]];
            int limited = Array.IndexOf(shop.Limited, pattern.Stock);
            if (limited >= 0)
                gain += master.Prices[asked + limited];
            if (gain <= Pays * shop.MostCost)
                continue;
            Add(master, pattern, asked);
            pool.Add(pattern);
            added = true;
        }

        return (added, ratio);
    }

    private void Add(CoverMaster master, CutPattern pattern, int asked)
    {
        int limited = Array.IndexOf(shop.Limited, pattern.Stock);
        List<int> rows = [];
        List<double> values = [];
        for (int p = 0; p < wanted.Length; p++)
            if (rowOf[p] >= 0 && pattern.Counts[p] > 0)
            {
                rows.Add(rowOf[p]);
                values.Add(Math.Min(pattern.Counts[p], wanted[p]));
            }

        if (rows.Count == 0)
            return;
        if (limited >= 0)
        {
            rows.Add(asked + limited);
            values.Add(1);
        }

        master.Add(pattern.Cost, [.. rows], [.. values]);
        patterns.Add(pattern);
    }
}
