using Laydown.Layout.Packing;

namespace Laydown.Layout.Patterns;

/// <summary>Whole numbers from a mix: what it cuts a whole time is fixed, else its greatest share; then the mix for what is left, with new patterns, until nothing is.</summary>
/// <remarks>Diving with column generation for the residual, as in [Furini2012].</remarks>
internal sealed class CutDive(ColumnSearch columns, CutShop shop, CostSteps steps)
{
    private const double Noise = 0.3;

    private int[] left = [];
    private int[] there = [];
    private List<CutUse> uses = [];

    /// <summary>Patterns for all that is wanted, or for what the sheets there can hold, at no more than a cost; null where this way costs more or the stop came.</summary>
    internal List<CutUse>? Run(int[] wanted, int[] sheets, List<CutPattern> pool, double most, int rounds, Chance chance, CancellationToken stop)
    {
        left = [.. wanted];
        there = [.. sheets];
        uses = [];
        double spent = 0;
        while (left.Any(n => n > 0))
        {
            CutMix mix = columns.Solve(left, there, pool, rounds, most - spent + (1e-6 * most), stop);
            if (stop.IsCancellationRequested || spent + steps.Up(mix.Bound) > most * (1 + 1e-9))
                return null;
            if (mix.Uses.Count == 0)
                break;
            spent += Fix(mix, chance);
            if (spent > most * (1 + 1e-9))
                return null;
        }

        return uses;
    }

    private double Fix(CutMix mix, Chance chance)
    {
        if (mix.Uses.Any(u => u.Times >= 1 - 1e-5))
            return mix.Uses.Where(u => u.Times >= 1 - 1e-5).Sum(u => Cut(u.Pattern, (int)(u.Times + 1e-5)));

        (CutPattern? best, double score) = (null, double.MinValue);
        foreach ((CutPattern pattern, double times) in mix.Uses)
            if (times + (Noise * chance.Share()) is double s && s > score)
                (best, score) = (pattern, s);
        return Cut(best!, 1);
    }

    private double Cut(CutPattern pattern, int times)
    {
        int limited = Array.IndexOf(shop.Limited, pattern.Stock);
        if (limited >= 0)
            there[limited] -= times;
        for (int p = 0; p < left.Length; p++)
            left[p] = Math.Max(0, left[p] - (pattern.Counts[p] * times));
        uses.Add(new(pattern, times));
        return pattern.Cost * times;
    }
}
