using Laydown.Colour.Spaces;
using Laydown.Optics.Panels;

namespace Laydown.Core.Tests.Panels;

/// <summary>The search for inks against the best of eight searches of another program, for 576 pairs (tests/data/optics/README.md).</summary>
public sealed class PairSolverReferenceTests
{
    private const double Wall = 20, Charge = 0.02;

    [Fact]
    public void The_whites_of_the_table_come_out()
    {
        PanelAim aim = PanelAim.For(Duplex.Model(Duplex.SplitFaces()).Spread(1), Duplex.Limits, 20, 0.5), table = Duplex.TableAim;

        // Half of the last digit of 0.75048 and 0.18355.
        Assert.Equal(table.DayWhite.Y, aim.DayWhite.Y, tolerance: 1e-4 * table.DayWhite.Y);
        Assert.Equal(table.NightWhite.Y, aim.NightWhite.Y, tolerance: 2e-4 * table.NightWhite.Y);
    }

    [Theory]
    [InlineData("daynight-576-w1.csv", 1, 1.25, 5.3, 3.0, 9.5)]
    [InlineData("daynight-576-dayfirst.csv", 0.1, 0.19, 0.75, 3.8, 12.7)]
    public void Within_one_percent_of_the_best_for_99_of_100_pairs(string table, double weight, double dayMean, double dayP95, double nightMean, double nightP95)
    {
        var pairs = Duplex.Pairs(table);
        Assert.Equal(576, pairs.Count);
        PanelLight light = Duplex.Model(Duplex.SplitFaces()).Spread(1);
        PairSolver solver = new(light, Duplex.Limits, Duplex.TableAim, weight, Wall, Charge);
        int worse = 0;
        double[] inks = new double[8], day = new double[576], night = new double[576];
        for (int i = 0; i < 576; i++)
        {
            double left = solver.SolveToWalls(pairs[i].Day, pairs[i].Night, inks);

            // The table keeps five decimals of what is left.
            worse += left > (1.01 * pairs[i].Left) + 5e-6 ? 1 : 0;
            (Xyz seenDay, Xyz seenNight) = light.See(inks);
            day[i] = Ciede2000.Between(pairs[i].Day, solver.Aim.SeenByDay(seenDay));
            night[i] = Ciede2000.Between(pairs[i].Night, solver.Aim.SeenLit(seenNight));
        }

        TestContext.Current.TestOutputHelper?.WriteLine(
            FormattableString.Invariant($"{worse} worse; day {day.Average():0.000} {P95(day):0.00}; night {night.Average():0.000} {P95(night):0.00}"));
        Assert.InRange(worse, 0, 5);
        Assert.InRange(Math.Round(day.Average(), 2), 0, dayMean);
        Assert.InRange(Math.Round(P95(day), 2), 0, dayP95);
        Assert.InRange(Math.Round(night.Average(), 2), 0, nightMean);
        Assert.InRange(Math.Round(P95(night), 1), 0, nightP95);
    }

    [Theory]
    [InlineData("daynight-576-w1.csv", 1)]
    [InlineData("daynight-576-dayfirst.csv", 0.1)]
    public void Held_to_the_ink_sums_no_pair_is_left_much_further(string table, double weight)
    {
        // The table's walls give way by up to some percent of an ink; ours hold. Measured: 0.013 on the mean, 1.03 for one pair at its sum.
        PairSolver solver = new(Duplex.Model(Duplex.SplitFaces()).Spread(1), Duplex.Limits, Duplex.TableAim, weight, inkCharge: Charge);
        double[] inks = new double[8];
        List<double> further = [];
        foreach ((Lab day, Lab night, _, double listed, _, _) in Duplex.Pairs(table))
        {
            solver.Solve(day, night, inks);
            Assert.InRange(inks[..4].Sum(), 0, 2.6 + 1e-9);
            Assert.InRange(inks[4..].Sum(), 0, 2.6 + 1e-9);
            Assert.All(inks, i => Assert.InRange(i, 0, 1));
            further.Add(Math.Sqrt(solver.Left(day, night, inks)) - Math.Sqrt(listed));
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"further {further.Average():0.000} {further.Max():0.00}"));
        Assert.InRange(further.Max(), 0, 1.5);
        Assert.InRange(further.Average(), 0, 0.1);
    }

    [Fact]
    public void The_tables_own_inks_leave_what_it_says()
    {
        PairSolver solver = new(Duplex.Model(Duplex.SplitFaces()).Spread(1), Duplex.Limits, Duplex.TableAim, 1, Wall, Charge);
        foreach ((Lab day, Lab night, double[] inks, double left, _, _) in Duplex.Pairs("daynight-576-w1.csv"))
        {
            // Inks are kept to five decimals: half of the last moves colours by up to 1e-3, and the squares by that times twice their root.
            Assert.Equal(left, solver.Left(day, night, inks), tolerance: 2e-3 * (Math.Sqrt(left) + 0.01));
        }
    }

    private static double P95(double[] values)
    {
        double[] sorted = [.. values.Order()];
        double at = 0.95 * (sorted.Length - 1);
        return sorted[(int)at] + ((at - (int)at) * (sorted[(int)at + 1] - sorted[(int)at]));
    }
}
