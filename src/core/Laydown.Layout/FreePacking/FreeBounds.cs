namespace Laydown.Layout.FreePacking;

/// <summary>What any layout costs at least.</summary>
/// <remarks>
/// By area; and by dual-feasible functions of width and height, which let large pieces count for more than their size [FeketeSchepers2004] [Carlier2007]:
/// the product of two such functions, summed over the pieces, is never more than the number of sheets.
/// </remarks>
internal static class FreeBounds
{
    /// <summary>Pieces × pairs of functions looked at, about.</summary>
    private const int MostWork = 2_000_000;

    private const int MostFunctions = 120;

    // Sums of shares of up to a million pieces are right to far more digits than this.
    private const double Slack = 1e-7;

    /// <summary>A cost no whole layout is under; 0 where no piece fits.</summary>
    internal static double Cost(FreeModel model)
    {
        int[] types = [.. Enumerable.Range(0, model.Types).Where(t => model.Wanted[t] > 0)];
        double area = types.Sum(t => (double)model.Area[t] * model.Wanted[t]);
        double byArea = CostOfArea(model, area);
        double sheets = Math.Max(Sheets(model, types), Math.Ceiling((area / model.BareArea.Max()) - Slack));
        return Math.Max(byArea, CostOfSheets(model, sheets));
    }

    /// <summary>The least number of sheets as large as the widest and the highest stock.</summary>
    internal static double Sheets(FreeModel model, int[] types)
    {
        if (types.Length == 0)
            return 0;

        int most = Math.Clamp((int)Math.Sqrt(MostWork / (double)types.Length), 1, MostFunctions);
        int w = model.StockW.Max(), h = model.StockH.Max();
        IReadOnlyList<DualFeasible> wide = DualFeasible.For(w, Sides(model, types), most), high = DualFeasible.For(h, Sides(model, types), most);
        double[][] wideW = Shares(wide, types, model.W), wideH = Shares(wide, types, model.H), highW = Shares(high, types, model.W), highH = Shares(high, types, model.H);
        double best = 0;
        for (int i = 0; i < wide.Count; i++)
            for (int j = 0; j < high.Count; j++)
            {
                double sum = 0;
                for (int n = 0; n < types.Length; n++)
                {
                    int t = types[n];
                    bool upright = model.W[t] <= w && model.H[t] <= h, turned = model.Turns[t] && model.H[t] <= w && model.W[t] <= h;
                    double share = upright ? wideW[i][n] * highH[j][n] : double.MaxValue;
                    sum += model.Wanted[t] * (turned ? Math.Min(share, wideH[i][n] * highW[j][n]) : share);
                }

                best = Math.Max(best, sum);
            }

        return Math.Ceiling(best - Slack);
    }

    private static IReadOnlyList<int> Sides(FreeModel model, int[] types) =>
        [.. types.SelectMany(t => new[] { model.W[t], model.H[t] }).Distinct().Order()];

    private static double[][] Shares(IReadOnlyList<DualFeasible> functions, int[] types, int[] sides) =>
        [.. functions.Select(f => types.Select(t => f.Of(sides[t])).ToArray())];

    // The cheapest sheets by area first, the last of them in part.
    private static double CostOfArea(FreeModel model, double area)
    {
        double cost = 0;
        foreach (int s in Enumerable.Range(0, model.Stocks).Where(s => model.BareArea[s] > 0).OrderBy(s => model.Cost[s] / model.BareArea[s]))
        {
            double sheets = Math.Min(model.StockCopies[s], area / model.BareArea[s]);
            cost += sheets * model.Cost[s];
            area -= sheets * model.BareArea[s];
            if (area <= 0)
                break;
        }

        return model.Cost.All(c => c == Math.Floor(c)) ? Math.Ceiling(cost - Slack) : FreeModel.Under(cost);
    }

    private static double CostOfSheets(FreeModel model, double sheets)
    {
        double cost = 0;
        foreach (int s in Enumerable.Range(0, model.Stocks).OrderBy(s => model.Cost[s]))
        {
            double taken = Math.Min(model.StockCopies[s], sheets);
            cost += taken * model.Cost[s];
            sheets -= taken;
        }

        return cost;
    }
}
