using Laydown.Measures;

namespace Laydown.Raster.Passes;

/// <summary>What a flat tint of one layer becomes along the feed: how many more or fewer dots than asked for fall on each row.</summary>
/// <remarks>
/// Every row's share of every pass is put where it falls, split between the two rows it falls on; rows are as wide as they are apart. An
/// edge of a swath off by δ rows
/// leaves a line of area g·δ at tone g, one that fades over h rows spreads the same area, g·δ/h in each of them. Where dots fired forth
/// and back share a row and lie f
/// columns apart, a share a·b·f of them falls on each other. What that does to the tone: <see cref="DotTones"/>. Own derivation, held
/// against dots put down one by one.
/// </remarks>
internal sealed class FeedProfile
{
    // Rows beyond the ends that are laid down too, because dots move in from there.
    private const int Margin = 96;

    private readonly double[] sum;

    private FeedProfile(int rows)
    {
        sum = new double[rows + (2 * Margin)];
        Error = new double[rows];
        Register = new double[rows];
        Lost = new double[rows];
    }

    /// <summary>Dots too few (under 0) or too many (over 0), as a share of those asked for; missing nozzles not counted.</summary>
    public double[] Error { get; }

    /// <summary>Loss by dots that fall on dots of the other direction, 0 or less.</summary>
    public double[] Register { get; }

    /// <summary>Loss by missing nozzles, 0 or less: share of the row's dots that nobody fires.</summary>
    public double[] Lost { get; }

    /// <summary>The profile of one layer.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="layer">Layer from 0.</param>
    /// <param name="errors">Errors of placement.</param>
    /// <param name="flaws">Flaws of the channel's nozzles.</param>
    /// <param name="beyond">Rows beyond either end of the sheet that are looked at too; the walk goes on there.</param>
    /// <exception cref="ArgumentException">Dots would fall more than 90 rows from their own.</exception>
    public static FeedProfile Of(PassPlan plan, int layer, PlacementErrors errors, NozzleFlaws flaws, int beyond = 0)
    {
        double rowUm = plan.Head.RowMm * 1000;
        return Of(
            plan, layer, n => ScatteredValues.Bell(n, errors.Seed) * errors.FeedJitterUm / rowUm, errors.FeedScaleUmPerM * 1e-6, errors.TwoWayUm, flaws, beyond);
    }

    /// <summary>The profile with every stand of the sheet told, in rows towards later rows.</summary>
    internal static FeedProfile Of(
        PassPlan plan, int layer, Func<int, double> standRows, double feedScale, double twoWayUm, NozzleFlaws flaws, int beyond = 0)
    {
        FeedProfile profile = new(plan.Rows + (2 * beyond));
        int between = plan.Head.RowsBetweenNozzles, from = -beyond - Margin, to = plan.Rows + beyond + Margin;
        int first = plan.MeetingAnywhere(layer, from, 0).Scan - between, last = plan.MeetingAnywhere(layer, to - 1, plan.Head.Passes - 1).Scan + between;
        double[] stands = [.. Enumerable.Range(first, last - first + 1).Select(standRows)];

        // A feed that is wrong by the same share each time draws the rows of the foremost nozzle and those of the last apart.
        double middle = ((plan.Head.Blocks - 1 - layer) * plan.Head.Nozzles) + ((plan.Head.Nozzles - 1) / 2.0);
        double perNozzle = feedScale * between, rowUm = plan.Head.RowMm * 1000;
        double apart = Math.Min(1, Bounds.Within(twoWayUm, 0, 1e6) / (plan.Head.ColumnMm * 1000));
        for (int row = from; row < to; row++)
        {
            double forth = 0, back = 0, lost = 0;
            for (int pass = 0; pass < plan.Head.Passes; pass++)
            {
                PassMeeting met = plan.MeetingAnywhere(layer, row, pass);
                double share = ShareOf(plan, layer, row, pass);
                lost += flaws.Missing.Contains(met.Nozzle) ? share : 0;
                double off = stands[met.Scan - first] + ((middle - met.Nozzle) * perNozzle);
                if (flaws.SlantUm.Count > 0 && flaws.SlantUm.TryGetValue(met.Nozzle, out double slant))
                    off += slant / rowUm;
                profile.Put(row - from, off, share);
                (forth, back) = plan.GoesForth(met.Scan) ? (forth + share, back) : (forth, back + share);
            }

            profile.Note(row - from - Margin, -lost, -apart * forth * back);
        }

        profile.Finish();
        return profile;
    }

    private static double ShareOf(PassPlan plan, int layer, int row, int pass)
    {
        ReadOnlySpan<int> ends = plan.Ends(layer, row);
        return (ends[pass] - (pass == 0 ? 0 : ends[pass - 1])) / ((double)PassPlan.Share * plan.Head.Passes);
    }

    private void Put(int row, double off, double share)
    {
        double at = row + Bounds.Within(off, -90, 90);
        int whole = (int)Math.Floor(at);
        if (whole < 0 || whole + 1 >= sum.Length)
            return;
        double rest = at - whole;
        sum[whole] += share * (1 - rest);
        sum[whole + 1] += share * rest;
    }

    private void Note(int row, double lost, double register)
    {
        if (row < 0 || row >= Error.Length)
            return;
        Lost[row] = lost;
        Register[row] = register;
    }

    // Missing nozzles count as firing here; what they owe stands apart, because it alone can be made good.
    private void Finish()
    {
        for (int row = 0; row < Error.Length; row++)
        {
            // What adding up shares of binary fractions leaves is no band.
            double error = sum[row + Margin] - 1;
            Error[row] = Math.Abs(error) < 1e-12 ? 0 : error;
        }
    }
}
