using Laydown.Colour.Gamuts;
using Laydown.Colour.Inks;
using Laydown.Colour.Inversion;
using Laydown.Colour.Named;
using Laydown.Colour.Spaces;
using Laydown.Core.Tests.Colour.Fits;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Colour;

/// <summary>Separation of a print with six inks: tables, links, named colours, gamut.</summary>
public sealed class SeparationLawTests
{
    private static readonly InkWishes Wishes = InkWishes.For(SixInks.Names);
    private static readonly Lazy<InkInverse> Inverse = new(() => ProfileTableMaker.InverseFor(SixInks.Model, SixInks.Limits, BlackPolicy.Medium, Wishes));

    [Fact]
    public void Wishes_know_black_and_light_inks_by_name()
    {
        Assert.Equal(3, Wishes.Black);
        Assert.Equal([(0, 4), (1, 5)], Wishes.LightPairs);
    }

    [Fact]
    public void Greys_are_met_and_no_ink_turns_back()
    {
        double[] inks = new double[6], last = new double[6];
        double darkest = ProfileTableMaker.DarkestNeutral(Inverse.Value).L;
        for (double l = 100; l > darkest + 0.5; l -= 0.5)
        {
            Inverse.Value.Solve(new(l, 0, 0), inks, [.. Inverse.Value.EverywhereStarts]);
            Lab seen = Inverse.Value.Predict(inks);
            Assert.True(seen.Chroma < 1, Invariant($"L* {l}: chroma {seen.Chroma}"));
            Assert.Equal(l, seen.L, 0.3);
            for (int ink = 0; ink < 4; ink++)
                Assert.True(inks[ink] > last[ink] - 0.02, Invariant($"L* {l}: ink {ink} from {last[ink]} to {inks[ink]}"));

            // This print has room for little colour beside full black, so black starts before L* 55, but not in the lights.
            if (l > 80)
                Assert.True(inks[3] < 0.005, Invariant($"L* {l}: black {inks[3]}"));
            inks.CopyTo(last, 0);
        }
    }

    [Fact]
    public void Light_inks_carry_the_lights()
    {
        double[] inks = new double[6];
        Inverse.Value.Solve(new(85, -8, -12), inks, [.. Inverse.Value.EverywhereStarts]);
        Assert.True(inks[4] > 4 * inks[0], Invariant($"light cyan {inks[4]}, cyan {inks[0]}"));
    }

    [Fact]
    public void A_link_keeps_limits_bare_white_and_pure_black()
    {
        LinkMaker maker = LinkMaker.FromCmyk(Inverse.Value, SixInks.Names, new FixedInks(SixInks.Model, [0, 1, 2, 3]));
        LinkTables link = maker.Make(5, 1, null, TestContext.Current.CancellationToken);
        double[] inks = new double[6];
        LinkReader reader = new(link);
        reader.Read([0, 0, 0, 0], inks);
        Assert.All(inks, i => Assert.Equal(0, i));
        reader.Read([0, 0, 0, 1], inks);
        Assert.Equal(1, inks[3], 0.01);
        Assert.True(inks.Sum() < 1.02, Invariant($"{inks.Sum()}"));
        for (int node = 0; node < link.Table.Count; node += 6)
        {
            Assert.True(Enumerable.Range(node, 6).Sum(i => link.Table[i]) <= SixInks.Limits.Total + 1e-5);
            for (int ink = 0; ink < 6; ink++)
                Assert.InRange(link.Table[node + ink], 0, (float)SixInks.Limits.PerInk[ink]);
        }

        // Five nodes leave more between them than a real table; the exact way itself is what the error is measured against.
        Assert.True(maker.Error(link, 300).Average() < 1);
    }

    [Fact]
    public void The_raster_stage_gives_what_the_plain_reader_gives_on_nodes_and_edges_and_keeps_the_limits_between()
    {
        LinkMaker maker = LinkMaker.FromCmyk(Inverse.Value, SixInks.Names, new FixedInks(SixInks.Model, [0, 1, 2, 3]));
        LinkTables link = maker.Make(5, 1.3, null, TestContext.Current.CancellationToken);
        InkLink stage = new(link);
        LinkReader reader = new(link);
        Tile source = new(4, 1, 625 + 500), target = new(6, 1, 625 + 500);
        for (int x = 0; x < source.Columns; x++)
        {
            double[] scattered = Prints.Scatter(x);
            for (int channel = 0; channel < 4; channel++)
            {
                // First every node, found back through the curve; then pixels anywhere.
                int digit = x / (int)Math.Pow(5, 3 - channel) % 5;
                double value = x < 625 ? Math.Pow(digit / 4.0, 1.3) : scattered[channel];
                source.Row(channel, 0)[x] = (ushort)Math.Round(value * Tile.Full);
            }
        }

        stage.Run(source, target);
        double[] inks = new double[6];
        for (int x = 0; x < source.Columns; x++)
        {
            double sum = 0;
            reader.Read([.. Enumerable.Range(0, 4).Select(c => source.Row(c, 0)[x] / (double)Tile.Full)], inks);
            for (int ink = 0; ink < 6; ink++)
            {
                sum += target.Row(ink, 0)[x];
                Assert.True(target.Row(ink, 0)[x] <= SixInks.Limits.PerInk[ink] * Tile.Full + 1);

                // Simplex and multilinear agree on nodes; curves of 257 points put a node off by up to 1e-4 of the way to the next.
                if (x < 625)
                    Assert.Equal(inks[ink] * Tile.Full, target.Row(ink, 0)[x], 40.0);
            }

            Assert.True(sum <= SixInks.Limits.Total * Tile.Full);
        }
    }

    [Fact]
    public void Named_colours_are_met_with_little_ink_or_told_to_be_out_of_reach()
    {
        NamedColourSolver solver = new(SixInks.Model, SixInks.Limits, Wishes);
        NamedSolution met = solver.Solve(SixInks.Model.ToLab([0.1, 0.4, 0.3, 0, 0, 0.2]));
        Assert.True(met.Reachable && met.DeltaE00 < 0.1);
        NamedSolution far = solver.Solve(new(55, 95, 70));
        Assert.False(far.Reachable);

        // No small change of ink comes nearer.
        for (int ink = 0; ink < 6; ink++)
        {
            foreach (double step in new[] { -0.01, 0.01 })
            {
                double[] other = [.. far.Inks];
                other[ink] += step;
                SixInks.Limits.Project(other);
                Assert.True(Ciede2000.Between(far.Wanted, SixInks.Model.ToLab(other)) > far.DeltaE00 - 1e-3);
            }
        }
    }

    [Fact]
    public void The_gamut_of_a_ball_is_a_ball()
    {
        // 20 000 points of a ball of radius 40 around the middle: cells take the farthest in 5°, so the edge is met to 1 %.
        Gamut ball = Gamut.From(Enumerable.Range(1, 20000).Select(i =>
        {
            double z = (2.0 * i / 20001) - 1, turn = i * 2.399963229728653, ring = Math.Sqrt(1 - (z * z));
            return new Lab(50 + (40 * z), 40 * ring * Math.Cos(turn), 40 * ring * Math.Sin(turn));
        }));
        Assert.Equal(4.0 / 3 * Math.PI * 64000, ball.Volume, 0.01 * 268000);
        Assert.Equal(40, ball.MostChroma(50, 123), 0.5);
        Assert.Equal(Math.Sqrt(1600 - 400), ball.MostChroma(70, 200), 0.7);
        Assert.True(ball.Holds(new(50, 39, 0)) && !ball.Holds(new(50, 41, 0)));
    }

    [Fact]
    public void The_gamut_of_a_print_holds_what_it_prints()
    {
        Gamut gamut = Gamut.Of(SixInks.Model, SixInks.Limits.PerInk, SixInks.Limits.Total);
        int outside = 0;
        for (int i = 1; i <= 1000; i++)
        {
            double[] inks = SixInks.Mix(i, 6);
            SixInks.Limits.Project(inks);
            outside += gamut.Depth(Lab.From(SixInks.Model.ToXyz(inks), SixInks.Model.White)) > 1.05 ? 1 : 0;
        }

        Assert.True(outside <= 5, Invariant($"{outside}"));
    }
}
