using Laydown.Colour.Spaces;
using Laydown.Core.Tests.Colour;
using Laydown.Optics.Looks;
using Laydown.Optics.Panels;

namespace Laydown.Core.Tests.Panels;

/// <summary>What any search for inks of a pair must do.</summary>
public sealed class PairSolverLawTests
{
    private static PairSolver Solver(double weight = 1, double scatter = 8)
    {
        PanelLight light = Duplex.Model(Duplex.SplitFaces(scatter)).At(1);
        return new(light, Duplex.Limits, PanelAim.For(light, Duplex.Limits, 20, 0.5), weight);
    }

    [Fact]
    public void A_search_through_all_of_the_ink_space_is_never_better_by_more_than_a_third_of_a_difference()
    {
        // 500 pairs against 4000 scattered mixtures each, the best four of them walked downhill step by step along single inks and pairs.
        PairSolver solver = Solver();
        double[][] scattered = [.. Enumerable.Range(0, 4000).Select(Mixture)];
        (Xyz Day, Xyz Night)[] seen = [.. scattered.Select(m => solver.Light.See(m))];
        double[] better = new double[500];
        Parallel.For(0, 500, i =>
        {
            (Lab day, Lab night) = Pair(i);
            double[] inks = new double[8];
            solver.Solve(day, night, inks);
            double ours = Math.Sqrt(solver.Left(day, night, inks));
            int[] best = [.. Enumerable.Range(0, scattered.Length).OrderBy(j => Rough(solver, seen[j], day, night)).Take(4)];
            better[i] = ours - best.Min(j => Math.Sqrt(Walk(solver, day, night, [.. scattered[j]])));
        });
        Assert.InRange(better.Max(), double.MinValue, 0.3);
    }

    [Fact]
    public void Pairs_made_by_inks_are_found_again()
    {
        PairSolver solver = Solver();
        double[] inks = new double[8];
        for (int i = 0; i < 60; i++)
        {
            double[] made = [.. Prints.Scatter(i).Select(c => 0.6 * c), .. Prints.Scatter(i + 300).Select(c => 0.6 * c)];
            (Xyz day, Xyz night) = solver.Light.See(made);
            double left = solver.Solve(solver.Aim.SeenByDay(day), solver.Aim.SeenLit(night), inks);

            // Colours that inks make need no difference: what is left is at most the charge of 0.1 for those inks.
            Assert.InRange(left, 0, (0.01 * made.Sum(c => c * c)) + 1e-4);
        }
    }

    [Fact]
    public void One_grey_ramp_for_both_views_asks_for_steadily_less_ink_on_both_sides()
    {
        PairSolver solver = Solver();
        double[] inks = new double[8];
        (double front, double back) = (double.MaxValue, double.MaxValue);
        for (double lightness = 30; lightness <= 98; lightness += 1)
        {
            solver.Solve(new(lightness, 0, 0), new(lightness, 0, 0), inks);
            (double nowFront, double nowBack) = (Darkness(inks.AsSpan(0, 4)), Darkness(inks.AsSpan(4, 4)));

            // A share of a percent of one ink goes to and fro where black and grey of colours change places.
            Assert.InRange(nowFront, 0, front + 0.01);
            Assert.InRange(nowBack, 0, back + 0.01);
            (front, back) = (nowFront, nowBack);
        }
    }

    [Fact]
    public void Along_ramps_no_ink_jumps()
    {
        PairSolver solver = Solver();
        double[] inks = new double[8], last = new double[8];
        // Darker days cannot hold a night of L* 70; there colours let more of the lamp through than black of the same day, and over three
        // L* at the border black takes their place, up to 15 % for one L*.
        for (double lightness = 48; lightness <= 95; lightness += 1)
        {
            solver.Solve(new(lightness, 4, 6), new(70, 0, -8), inks);
            if (lightness > 48)
                Assert.All(Enumerable.Range(0, 8), ink => Assert.InRange(Math.Abs(inks[ink] - last[ink]), 0, 0.03));
            inks.CopyTo(last, 0);
        }
    }

    [Fact]
    public void More_weight_on_a_view_never_leaves_more_of_it()
    {
        for (int i = 0; i < 40; i++)
        {
            (Lab day, Lab night) = Pair(i);
            double lastNight = double.MaxValue, lastDay = 0;
            foreach (double weight in new[] { 0.1, 1.0, 10 })
            {
                PairSolver solver = Solver(weight);
                double[] inks = new double[8];
                solver.SolveToWalls(day, night, inks);
                double byDay = Solver(0).Left(day, night, inks);
                double lit = Solver(1).Left(day, night, inks) - byDay;

                // Exact for the very best; the search stops within a percent of it.
                Assert.InRange(lit, 0, (1.02 * lastNight) + 0.02);
                Assert.InRange(byDay, (0.98 * lastDay) - 0.02, double.MaxValue);
                (lastNight, lastDay) = (lit, byDay);
            }
        }
    }

    [Fact]
    public void An_opaque_white_leaves_day_alone_and_night_dark()
    {
        PanelLight light = Duplex.Model(Duplex.SplitFaces(100)).At(1);
        (Xyz bareDay, Xyz bareNight) = light.See([0.3, 0, 0, 0, 0, 0, 0, 0]);
        (Xyz day, Xyz night) = light.See([0.3, 0, 0, 0, 1, 1, 0.6, 0]);
        Assert.Equal(bareDay.Y, day.Y, tolerance: 0.003 * bareDay.Y);
        Assert.InRange(night.Y, 0, bareNight.Y);
    }

    private static double Darkness(ReadOnlySpan<double> cmyk) => cmyk[3] + ((cmyk[0] + cmyk[1] + cmyk[2]) / 3);

    private static (Lab Day, Lab Night) Pair(int i)
    {
        double[] a = Prints.Scatter(i + 1000), b = Prints.Scatter(i + 5000);
        return (new(25 + (70 * a[0]), (80 * a[1]) - 40, (80 * a[2]) - 40), new(10 + (90 * b[0]), (100 * b[1]) - 50, (100 * b[2]) - 50));
    }

    private static double[] Mixture(int i)
    {
        // Half of them sparse: best mixtures often do without some inks.
        double[] all = [.. Prints.Scatter(i), .. Prints.Scatter(i + 70_000)];
        double[] inks = [.. all.Select((c, ink) => i % 2 == 0 ? c : Math.Max(0, (1.6 * c) - 0.6))];
        for (int side = 0; side < 8; side += 4)
        {
            double sum = inks[side..(side + 4)].Sum();
            for (int ink = side; ink < side + 4; ink++)
                inks[ink] *= Math.Min(1, 2.6 / sum);
        }

        return inks;
    }

    private static double Rough(PairSolver solver, (Xyz Day, Xyz Night) seen, Lab day, Lab night) =>
        Square(solver.Aim.SeenByDay(seen.Day), day) + Square(solver.Aim.SeenLit(seen.Night), night);

    private static double Square(Lab one, Lab other) =>
        ((one.L - other.L) * (one.L - other.L)) + ((one.A - other.A) * (one.A - other.A)) + ((one.B - other.B) * (one.B - other.B));

    private static double Walk(PairSolver solver, Lab day, Lab night, double[] inks)
    {
        double left = solver.Left(day, night, inks);
        for (double step = 0.2; step > 0.004; step *= 0.5)
        {
            for (bool moved = true; moved;)
            {
                moved = false;
                for (int one = 0; one < 8; one++)
                {
                    foreach (double by in new[] { step, -step })
                    {
                        double was = inks[one];
                        inks[one] = Math.Clamp(was + by, 0, 1);
                        double now = solver.Left(day, night, inks);
                        if (now < left - 1e-9)
                            (left, moved) = (now, true);
                        else
                            inks[one] = was;
                    }
                }
            }
        }

        return left;
    }
}
