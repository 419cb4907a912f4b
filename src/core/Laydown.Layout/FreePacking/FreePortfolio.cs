namespace Laydown.Layout.FreePacking;

/// <summary>Plain orders of pieces by several rules of fitting: the best of them is where the search starts.</summary>
internal static class FreePortfolio
{
    /// <summary>Work of all passes is about that of so many pieces put down.</summary>
    private const long MostWork = 30_000;

    /// <summary>The best plain layout; the first is made whatever the stop says.</summary>
    internal static FreeLayout Best(FreeModel model, double bound, Action<FreeLayout>? better, CancellationToken stop)
    {
        FreeFirst first = new(model);
        IReadOnlyList<int[]> orders = Orders(model);
        FreeLayout best = first.Fill(orders[0], FreeFit.ShortRest, CancellationToken.None)!;
        better?.Invoke(best);
        long passes = Math.Max(1, MostWork / Math.Max(1, model.Wanted.Sum(w => (long)w)));
        foreach (FreeFit fit in Enum.GetValues<FreeFit>())
            foreach (int[] order in orders)
            {
                if ((model.OnlyCost && best.IsWhole && best.Cost <= bound) || stop.IsCancellationRequested || passes-- <= 0)
                    return best;
                if (first.Fill(order, fit, stop) is not FreeLayout layout || !layout.IsBetterThan(best))
                    continue;

                best = layout;
                better?.Invoke(best);
            }

        return best;
    }

    private static IReadOnlyList<int[]> Orders(FreeModel model)
    {
        int[] types = [.. Enumerable.Range(0, model.Types).Where(t => model.Wanted[t] > 0)];
        int[] By(Func<int, long> key) => [.. types.OrderByDescending(key)];
        List<int[]> orders =
        [
            By(t => model.Area[t]),
            By(t => Math.Max(model.W[t], model.H[t])),
            By(t => Math.Min(model.W[t], model.H[t])),
            By(t => model.H[t]),
            By(t => model.W[t]),
            By(t => (long)model.W[t] + model.H[t]),
        ];
        if (model.HasGroups)
            orders.Add([.. types.OrderBy(t => (uint)model.Problem.Pieces[t].Group).ThenByDescending(t => model.Area[t])]);
        return orders;
    }
}
