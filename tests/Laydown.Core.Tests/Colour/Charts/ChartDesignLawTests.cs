using Laydown.Colour.Calibration;
using Laydown.Colour.Charts;
using Laydown.Colour.Readings;

namespace Laydown.Core.Tests.Colour.Charts;

/// <summary>Charts of every kind for one to eight inks.</summary>
public sealed class ChartDesignLawTests
{
    private static readonly string[] Names = ["Cyan", "Magenta", "Yellow", "Black", "Light cyan", "Light magenta", "Orange", "Violet"];

    public static TheoryData<ChartKind, int, double> Cases()
    {
        TheoryData<ChartKind, int, double> cases = [];
        foreach (ChartKind kind in Enum.GetValues<ChartKind>().Where(k => k != ChartKind.InkOptics))
        {
            foreach ((int inks, double total) in new[] { (1, 100.0), (4, 300), (4, 163.7), (6, 260), (8, 240) })
                cases.Add(kind, inks, total);
        }

        return cases;
    }

    [Theory, MemberData(nameof(Cases))]
    public void Every_patch_keeps_every_limit_in_whole_codes_of_8_bits(ChartKind kind, int inks, double total)
    {
        foreach (ChartPatch patch in Made(kind, inks, total).Patches)
        {
            int[] codes = [.. patch.Inks.Select(i => (int)Math.Round(i * 255))];
            Assert.All(patch.Inks, i => Assert.Equal(Math.Round(i * 255), i * 255, 1e-9));
            Assert.All(codes, c => Assert.InRange(c, 0, 0.9 * 255));
            Assert.True(codes.Sum() <= (total * 2.55) + 1e-9);
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void Ids_are_unique_no_patch_but_the_stock_stands_twice_and_the_seed_fixes_all(ChartKind kind, int inks, double total)
    {
        Chart chart = Made(kind, inks, total);
        Assert.Equal(chart.Patches.Count, chart.Patches.Select(p => p.Id).Distinct().Count());
        string[] inked = [.. chart.Patches.Where(p => p.Inks.Sum() > 0).Select(p => string.Join(' ', p.Inks))];
        Assert.Equal(inked.Length, inked.Distinct().Count());
        Assert.Equal(4, chart.Patches.Count - inked.Length);
        Assert.Equal(chart.Patches.Select(p => string.Join(' ', p.Inks)), Made(kind, inks, total).Patches.Select(p => string.Join(' ',
            p.Inks)));
    }

    [Fact]
    public void Four_inks_have_the_whole_node_set_where_the_limit_allows()
    {
        Chart chart = ChartDesign.Make(ChartKind.CharacteriseMedium, [.. Names.Take(4).Select(n => new ChartInk(n))], 400, 1).Value;
        int[] colour = [0, 102, 178, 255], black = [0, 102, 204, 255];
        HashSet<string> there = [.. chart.Patches.Select(p => string.Join(' ', p.Inks.Select(i => Math.Round(i * 255))))];
        foreach (int c in colour)
        {
            foreach (int m in colour)
            {
                foreach (int y in colour)
                    Assert.All(black, k => Assert.Contains(Invariant($"{c} {m} {y} {k}"), there));
            }
        }
    }

    [Fact]
    public void The_sizes_are_as_named_and_lights_are_denser_than_shadows()
    {
        Assert.InRange(Made(ChartKind.CharacteriseSmall, 4, 300).Patches.Count, 230, 330);
        Assert.InRange(Made(ChartKind.CharacteriseMedium, 4, 300).Patches.Count, 650, 850);
        Chart full = Made(ChartKind.CharacteriseFull, 4, 300);
        Assert.InRange(full.Patches.Count, 1400, 1650);
        double[] filling = [.. full.Patches.Where(p => p.Part == "filling").Select(p => p.Inks.Sum())];
        Assert.True(filling.Count(s => s < 1) > 0.25 * filling.Length);
    }

    // Filling is as even as it says: its nearest pairs lie much further apart than those of as many chance patches.
    [Fact]
    public void Filling_keeps_its_distance_from_all_other_patches()
    {
        Chart chart = Made(ChartKind.CharacteriseSmall, 4, 300);
        ChartPatch[] filling = [.. chart.Patches.Where(p => p.Part == "filling")];
        Assert.NotEmpty(filling);
        double near = filling.Average(f => chart.Patches.Where(p => p != f).Min(p => Distance(p.Inks, f.Inks)));
        double[][] chance = [.. Enumerable.Range(0, filling.Length).Select(i => Prints.Scatter(i + 7).Select(v => v * 0.66).ToArray())];
        double nearChance = chance.Average(f => chance.Concat(chart.Patches.Select(p => p.Inks.ToArray())).Where(p => p != f).Min(p =>
            Distance(p, f)));
        Assert.True(near > nearChance, Invariant($"filling {near:0.000}, chance {nearChance:0.000}"));
    }

    [Fact]
    public void Readings_of_the_linearising_chart_give_wedges_and_a_total_limit()
    {
        Chart chart = ChartDesign.Make(ChartKind.Linearise, [.. Names.Take(4).Select(n => new ChartInk(n))], 400, 3).Value;
        ReadingSet read = new("read", chart.InkNames, MeasuredHow.Unsaid,
            [.. chart.Patches.Select(p => Calibration.SyntheticPress.Read(p.Id, [.. p.Inks]))]);
        foreach (Wedge wedge in Wedges.From(read, "read").Value)
        {
            Assert.Equal(21, wedge.Steps.Count);
            Assert.True(Linearisation.Make(wedge, LinearisationAim.ToneValue, 100, "read").IsTaken);
        }

        Assert.InRange(TotalLimitFinder.Find(read, null, "read").Value.Limit.Value, 150, 400);
    }

    [Fact]
    public void Inks_and_limits_that_cannot_be_are_refused()
    {
        ChartInk[] two = [new("Cyan"), new("Magenta")];
        Assert.False(ChartDesign.Make(ChartKind.Verify, [], 100, 1).IsTaken);
        Assert.False(ChartDesign.Make(ChartKind.Verify, [.. two, new("cyan")], 200, 1).IsTaken);
        Assert.False(ChartDesign.Make(ChartKind.Verify, two, 90, 1).IsTaken);
        Assert.False(ChartDesign.Make(ChartKind.Verify, two, 201, 1).IsTaken);
        Assert.False(ChartDesign.Make(ChartKind.Verify, two, double.NaN, 1).IsTaken);
    }

    private static double Distance(IReadOnlyList<double> one, IReadOnlyList<double> other) =>
        Math.Sqrt(one.Zip(other, (a, b) => Math.Pow(Math.Pow(a, 0.7) - Math.Pow(b, 0.7), 2)).Sum());

    private static Chart Made(ChartKind kind, int inks, double total) =>
        ChartDesign.Make(kind, [.. Names.Take(inks).Select((n, i) => new ChartInk(n, i == 1 ? 80.3 : 90))], total, 5).Value;
}
