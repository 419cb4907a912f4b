using Laydown.Colour.Inks;
using Laydown.Colour.Inversion;
using Laydown.Colour.Spaces;

namespace Laydown.Core.Tests.Colour;

/// <summary>Inks for a colour: limits always hold, printable colours are met, black rises smoothly.</summary>
public sealed class InkInverseLawTests
{
    private static readonly InkLimits Limits = new([1, 1, 0.95, 1], 2.5);
    private static readonly double[] Start = [0.3, 0.3, 0.3, 0.1];

    [Fact]
    public void Printable_colours_are_met()
    {
        NeugebauerModel model = Prints.Model();
        InkInverse inverse = new(model, Limits, BlackPolicy.Usual);
        double worst = 0;
        for (int i = 1; i <= 300; i++)
        {
            double[] inks = Prints.Scatter(i);
            Limits.Project(inks);
            Lab wanted = inverse.Predict(inks);
            double[] found = [.. Start];
            inverse.Solve(wanted, found, inks);
            worst = Math.Max(worst, Ciede2000.Between(wanted, inverse.Predict(found)));
        }

        Assert.True(worst < 0.1, Invariant($"worst {worst}"));
    }

    [Fact]
    public void Limits_hold_for_any_colour()
    {
        InkInverse inverse = new(Prints.Model(), Limits, BlackPolicy.Usual);
        for (int i = 0; i < 300; i++)
        {
            double[] at = Prints.Scatter(i), inks = [.. Start];
            inverse.Solve(new(100 * at[0], (256 * at[1]) - 128, (256 * at[2]) - 128), inks);
            Assert.True(inks.Sum() <= Limits.Total + 1e-9);
            for (int ink = 0; ink < 4; ink++)
                Assert.InRange(inks[ink], 0, Limits.PerInk[ink]);
        }
    }

    [Fact]
    public void White_takes_no_ink()
    {
        double[] inks = [.. Start];
        new InkInverse(Prints.Model(), Limits, BlackPolicy.Usual).Solve(new(100, 0, 0), inks);
        Assert.All(inks, i => Assert.True(i < 1e-3, Invariant($"{i}")));
    }

    [Fact]
    public void Black_rises_steadily_down_the_neutral_axis()
    {
        InkInverse inverse = new(Prints.Model(), Limits, BlackPolicy.Usual);
        double[] inks = [.. Start];
        double last = 0;
        for (double l = 100; l >= 0; l -= 0.5)
        {
            Separated found = inverse.Solve(new(l, 0, 0), inks);
            Assert.True(inks[3] >= last - 1e-3, Invariant($"L* {l}: black {inks[3]} after {last}"));
            Assert.True(l > 55 ? inks[3] < 1e-3 : inks[3] - last < 0.05, Invariant($"L* {l}: black {inks[3]} after {last}"));
            Assert.True(l < 15 || found.Distance < 0.1, Invariant($"L* {l}: missed by {found.Distance}"));
            last = inks[3];
        }
    }

    [Fact]
    public void What_cannot_be_printed_keeps_its_hue_nearly()
    {
        InkInverse inverse = new(Prints.Model(), Limits, BlackPolicy.Usual);
        double[] inks = [.. Start];
        Separated found = inverse.Solve(new(50, 90, 60), inks, [0.1, 0.8, 0.8, 0]);
        Lab seen = inverse.Predict(inks);
        Assert.True(found.Distance > 1);
        Assert.Equal(Math.Atan2(60, 90), Math.Atan2(seen.B, seen.A), tolerance: 0.2);
    }

    [Fact]
    public void Projection_moves_to_the_limit_and_no_further()
    {
        double[] inks = [1.2, 0.9, 0.9, 0.7];
        Limits.Project(inks);
        Assert.Equal(2.5, inks.Sum(), tolerance: 1e-9);
        double[] again = [.. inks];
        Limits.Project(again);
        Assert.Equal(inks, again);
    }

    [Fact]
    public void Every_node_of_the_tables_keeps_the_limits()
    {
        ProfileTables tables = ProfileTableMaker.Make(Prints.Model(), Limits, BlackPolicy.Usual, 3, 9, TestContext.Current.CancellationToken);
        foreach (IReadOnlyList<float> table in new[] { tables.Colorimetric, tables.Perceptual })
        {
            Assert.Equal(9 * 9 * 9 * 4, table.Count);
            for (int node = 0; node < table.Count; node += 4)
            {
                Assert.True(table[node] + table[node + 1] + table[node + 2] + table[node + 3] <= 2.5 + 1e-6);
                for (int ink = 0; ink < 4; ink++)
                    Assert.InRange(table[node + ink], 0, (float)Limits.PerInk[ink]);
            }
        }
    }
}
