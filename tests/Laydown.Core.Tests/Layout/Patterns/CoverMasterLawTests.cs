using Laydown.Layout.Packing;
using Laydown.Layout.Patterns;

namespace Laydown.Core.Tests.Layout.Patterns;

/// <summary>Prices and times of the linear programme prove each other: both keep all bounds and come to the same cost (strong duality).</summary>
public sealed class CoverMasterLawTests
{
    /// <summary>Rows are excused by 1e-7 times their number to part ties; the tolerance is ten times the sum of that.</summary>
    private const double Tolerance = 1e-4;

    [Fact]
    public void Times_cover_what_is_wanted_prices_undercut_no_pattern_and_both_come_to_one_cost()
    {
        for (int seed = 1; seed <= 20; seed++)
        {
            Chance chance = new(seed);
            int rows = 3 + chance.Below(6), columns = 2 * rows;
            int[] wanted = [.. Enumerable.Range(0, rows).Select(_ => 1 + chance.Below(50))];
            double[][] pattern = [.. Enumerable.Range(0, columns).Select(c => Enumerable.Range(0, rows).Select(r => c == r ? 1.0 : chance.Below(4)).ToArray())];
            double[] cost = [.. pattern.Select(_ => 1.0 + chance.Below(3))];
            CoverMaster master = new(wanted, [], 1000);
            for (int c = 0; c < columns; c++)
                master.Add(cost[c], [.. Enumerable.Range(0, rows)], pattern[c]);

            double least = master.Solve();

            double[] times = new double[columns];
            foreach ((int column, double use) in master.Uses())
                times[column] = use;
            for (int r = 0; r < rows; r++)
                Assert.True(Enumerable.Range(0, columns).Sum(c => times[c] * pattern[c][r]) >= wanted[r] - Tolerance);
            for (int c = 0; c < columns; c++)
                Assert.True(Enumerable.Range(0, rows).Sum(r => master.Prices[r] * pattern[c][r]) <= cost[c] + Tolerance);
            Assert.All(master.Prices, p => Assert.True(p >= -Tolerance));
            Assert.Equal(Enumerable.Range(0, rows).Sum(r => master.Prices[r] * wanted[r]), least, Tolerance);
        }
    }
}
