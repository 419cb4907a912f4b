using Laydown.Press.HoldDown;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Xunit;

namespace Laydown.Core.Tests.Press;

/// <summary>Bows of free sheets worked out by hand from the formulas before this code was written, to three digits; no table prints them, and what is taken of ink is an assumption.</summary>
public sealed class SheetBendByHandLawTests
{
    /// <summary>5 K from side to side over 1.22 m: acrylic 3 and 5 mm (70 · 10⁻⁶/K).</summary>
    [Theory, InlineData(3, 21.7), InlineData(5, 13.0)]
    public void A_sheet_warmer_above_bows_as_worked_out(double thicknessMm, double bowMm) =>
        Assert.Equal(bowMm, InkShrinkage.BowMm(70e-6 * 5 / (thicknessMm / 1000), 1220), tolerance: 0.05);

    /// <summary>30 µm of ink of 1.5 GPa that shrinks by 1 %, over 300 mm: PETG (2.1 GPa) 0.5, 1 and 2 mm, acrylic 3 mm (3.2 GPa).</summary>
    [Theory, InlineData(2.1, 0.5, 58), InlineData(2.1, 1, 14.5), InlineData(2.1, 2, 3.6), InlineData(3.2, 3, 1.1)]
    public void Ink_that_shrinks_bows_thin_sheets_as_worked_out(double gpa, double thicknessMm, double bowMm) =>
        Assert.Equal(bowMm, InkShrinkage.BowMm(InkShrinkage.CurvaturePerM(gpa, thicknessMm, 30), 300), tolerance: Math.Max(0.06, bowMm * 0.005));
}

public sealed class SheetBendLawTests
{
    /// <summary>The hump found without the formula, as for the strip: a chain of springs over a rigid table, its energy brought to its least.</summary>
    [Theory]
    [InlineData(8.34, 0.10, 35)]
    [InlineData(38.6, 0.11, 500)]
    public void The_hump_is_that_of_the_least_energy(double stiffnessNm, double curvaturePerM, double pressurePa)
    {
        PressedDome dome = PressedDome.OfCurvature(stiffnessNm, curvaturePerM, 10_000, pressurePa);
        double found = LeastEnergyHumpMm(stiffnessNm, -curvaturePerM, pressurePa, dome.StripMm * 1.8 / 1000);
        Assert.Equal(dome.HumpMm, found, tolerance: dome.HumpMm * 0.015);
    }

    [Fact]
    public void More_pressure_never_leaves_a_higher_hump_and_no_hump_is_higher_than_the_bow()
    {
        double last = double.MaxValue, bow = InkShrinkage.BowMm(0.1, 1220);
        for (double pa = 0.5; pa < 5000; pa *= 1.5)
        {
            double hump = PressedDome.OfCurvature(38.6, 0.1, 1220, pa).HumpMm;
            Assert.InRange(hump, 0, Math.Min(last, bow + 1e-9));
            last = hump;
        }
    }

    [Fact]
    public void Edges_that_only_the_vacuum_holds_must_be_seen_and_a_cool_bare_sheet_needs_no_look()
    {
        PressDescription press = Presses.Hybrid(Presses.Mode());
        Stock sheet = Presses.Board(bow: 5);
        Assert.Empty(SheetHeights.Of(press, sheet, 0, 0, 0).ToBeSeen);
        SheetHeight warm = SheetHeights.Of(press, sheet, 20, 20, 5);
        Assert.Contains("Watch all four edges", Assert.Single(warm.ToBeSeen), StringComparison.Ordinal);
        Assert.True(warm.BoundMm > warm.HeatLiftMm && warm.HeatLiftMm > warm.LiftWithVacuumMm);
    }

    [Fact]
    public void A_roll_neither_lifts_nor_humps()
    {
        SheetHeight roll = SheetHeights.Of(Presses.Hybrid(Presses.Mode()), Presses.Board() with { Kind = StockKind.Roll }, 30, 30, 20);
        Assert.Equal((0, 0, 0), (roll.LiftMm, roll.HumpMm, roll.BoundMm));
    }

    private static double LeastEnergyHumpMm(double d, double k0, double p, double length)
    {
        // Nodes from the part that lies flat to the edge. The sheet may not go under the table; the edge carries no moment. Gauss-Seidel on the quadratic energy.
        const int n = 36;
        double dx = length / n, bend = d / (dx * dx * dx);
        double[] w = new double[n + 1];
        for (int sweep = 0; sweep < 60_000; sweep++)
            for (int i = 2; i <= n; i++)
            {
                double force = -p * dx * (i == n ? 0.5 : 1), stiff = 0;
                for (int m = Math.Max(1, i - 1); m <= Math.Min(n - 1, i + 1); m++)
                {
                    double weight = m == i ? -2 : 1;
                    force -= bend * weight * (w[m - 1] - (2 * w[m]) + w[m + 1] - (k0 * dx * dx));
                    stiff += bend * weight * weight;
                }

                w[i] = Math.Max(0, w[i] + (force / stiff));
            }

        return w.Max() * 1000;
    }
}
