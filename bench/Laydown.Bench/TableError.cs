using Laydown.Colour.Spaces;
using Laydown.Optics.Looks;
using Laydown.Optics.Panels;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Stocks;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;

namespace Laydown.Bench;

/// <summary>How far a panel looked up in the table is from the same panel solved pixel by pixel.</summary>
internal static class TableError
{
    private const int Samples = 2000;
    private static readonly InkRole[] Inks = [InkRole.Cyan, InkRole.Magenta, InkRole.Yellow, InkRole.Black];

    /// <summary>ΔE00 between both looks, day and night views together: mean and 99th percentile over pixels spread evenly.</summary>
    /// <remarks>Without keeping contrast, so that both ways aim at the same.</remarks>
    public static (double Mean, double P99) Of(
        Catalogue catalogue, string stockId, string conditionId, float[] pixels, CancellationToken cancellation)
    {
        Stock stock = catalogue.Stocks.First(s => s.Id == stockId);
        PrintCondition condition = catalogue.Conditions.First(c => c.Id == conditionId);
        InkSet inks = catalogue.InkSets.First(s => s.Id == condition.InkSetId);
        LookLayer Layer(params InkRole[] roles) => new(LookFace.Second, [.. roles.Select(r => StackLights.InkOf(r, inks, catalogue.OpticsOf(condition)))]);
        double[] most = [.. Inks.Select(r => (condition.Inks.FirstOrDefault(i => i.Role == r)?.LimitPercent ?? 100) / 100)];
        PanelStack stack = new(
            StackLights.SheetOf(stock).Value, [Layer(Inks), Layer(InkRole.White), Layer(Inks)], LookFace.First,
            new(most, condition.TotalLimitPercent / 100, most, condition.TotalLimitPercent / 100));
        (Scene day, Scene night) = (Scene.Day(condition.RoomLux), Scene.Lit());
        PanelWish wish = new(1, WhiteUse.Fixed, [1], null, null, false, 2000);
        PairPicture small = new(300, 200, pixels);
        PanelPlan plan = PanelPlanner.Plan(stack, day, night, wish, small, 1, null, cancellation);
        return Compare(plan, new PairSolver(new PanelModel(stack, day, night).At(1), stack.Limits, plan.Aim, 1), new PanelModel(stack, day, night).At(1), small, cancellation);
    }

    private static (double Mean, double P99) Compare(PanelPlan plan, PairSolver exact, PanelLight light, PairPicture small, CancellationToken cancellation)
    {
        double[] errors = new double[2 * Samples];
        int step = small.Width * small.Height / Samples;
        Parallel.For(0, Samples, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            float[] pair = small.Pixels.AsSpan(6 * i * step, 6).ToArray(), wanted = new float[6];
            byte[] planes = new byte[plan.CoverageCount];
            plan.Rows(i * step / small.Width, 1, 1, small.Height, pair, planes);
            plan.Wanted(pair, wanted);
            double[] solved = new double[8], looked = [.. planes[..4].Concat(planes[5..]).Select(b => b / 255.0)];
            exact.Solve(new(wanted[0], wanted[1], wanted[2]), new(wanted[3], wanted[4], wanted[5]), solved);
            (Xyz byDay, Xyz lit) = light.See(looked);
            (Xyz bestDay, Xyz bestLit) = light.See(solved);
            errors[2 * i] = Ciede2000.Between(plan.Aim.SeenByDay(byDay), plan.Aim.SeenByDay(bestDay));
            errors[(2 * i) + 1] = Ciede2000.Between(plan.Aim.SeenLit(lit), plan.Aim.SeenLit(bestLit));
        });
        Array.Sort(errors);
        return (errors.Average(), errors[(int)(0.99 * errors.Length)]);
    }
}
