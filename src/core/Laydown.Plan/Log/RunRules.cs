namespace Laydown.Plan.Log;

/// <summary>Looks at the points of a chart by the rules of <see cref="RunRule"/>.</summary>
public static class RunRules
{
    /// <summary>What the rules say about points with one centre; each point is told of once for each rule that ends at it.</summary>
    /// <param name="centre">The centre.</param>
    /// <param name="points">The points, oldest first.</param>
    /// <param name="limitsOnly">Whether only limits are looked at: for ranges, which are skewed and hang together.</param>
    public static IReadOnlyList<ChartSignal> Look(double centre, IReadOnlyList<ChartPoint> points, bool limitsOnly = false)
    {
        List<ChartSignal> signals = [];
        double[] thirds = [.. points.Select(p => Thirds(p, centre))];
        for (int i = 0; i < points.Count; i++)
        {
            if (points[i].Value > points[i].Upper || points[i].Value < points[i].Lower)
                Say(i, RunRule.BeyondLimit, Invariant($"{points[i].Value:0.###} lies beyond the limit {(points[i].Value > points[i].Upper ? points[i].Upper : points[i].Lower):0.###}"));
            if (limitsOnly)
                continue;
            if (Same(thirds, i, 9, 9, 0))
                Say(i, RunRule.NineOnOneSide, "nine points in a row lie on one side of the centre");
            if (Rows(points, i, 6))
                Say(i, RunRule.SixRisingOrFalling, "six points in a row rise or fall");
            if (Same(thirds, i, 3, 2, 2) && Math.Abs(thirds[i]) > 2)
                Say(i, RunRule.TwoOfThreeFarOut, "two of three points lie in the outer third or beyond, on one side");
            if (Same(thirds, i, 5, 4, 1) && Math.Abs(thirds[i]) > 1)
                Say(i, RunRule.FourOfFiveOut, "four of five points lie in the outer two thirds or beyond, on one side");
        }

        return signals;

        void Say(int point, RunRule rule, string what) => signals.Add(new(point, rule, Invariant($"{points[point].Label}: {what}.")));
    }

    // Distance from the centre in thirds of the way to the limit of that side; 0 where there is no way.
    private static double Thirds(ChartPoint point, double centre)
    {
        double way = point.Value >= centre ? point.Upper - centre : centre - point.Lower;
        return way > 0 ? 3 * (point.Value - centre) / way : 0;
    }

    private static bool Same(double[] thirds, int last, int of, int wanted, double beyond)
    {
        if (last + 1 < of)
            return false;
        ReadOnlySpan<double> look = thirds.AsSpan(last + 1 - of, of);
        int above = 0, below = 0;
        foreach (double third in look)
            (above, below) = (above + (third > beyond ? 1 : 0), below + (third < -beyond ? 1 : 0));
        return thirds[last] > 0 ? above >= wanted : below >= wanted;
    }

    private static bool Rows(IReadOnlyList<ChartPoint> points, int last, int of)
    {
        if (last + 1 < of)
            return false;
        IEnumerable<int> steps = Enumerable.Range(last + 2 - of, of - 1).Select(i => Math.Sign(points[i].Value - points[i - 1].Value));
        return steps.Distinct().ToList() is [1] or [-1];
    }
}
