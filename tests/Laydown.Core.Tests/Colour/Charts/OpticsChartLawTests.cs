using Laydown.Colour.Charts;
using Laydown.Measures;
using Xunit;

namespace Laydown.Core.Tests.Colour.Charts;

public sealed class OpticsChartLawTests
{
    private static readonly string[] Six = ["Cyan", "Magenta", "Yellow", "Black", "Light Cyan", "Light Magenta"];

    [Fact]
    public void Every_patch_has_at_most_one_colour_and_the_white_has_all_its_steps()
    {
        Chart chart = OpticsChart.Make(Six, 21).Value;
        int white = chart.InkNames.ToList().IndexOf(OpticsChart.White);
        Assert.All(chart.Patches, p => Assert.InRange(p.Inks.Where((_, i) => i != white).Count(i => i > 0), 0, 1));
        double[] steps = [.. chart.Patches.Where(p => p.Part == "white").Select(p => p.Inks[white]).Distinct().Order()];
        Assert.Equal(21, steps.Length);
        Assert.Equal(1, steps[^1]);
        Assert.All(chart.Patches.SelectMany(p => p.Inks), i => Assert.Equal(Math.Round(i * 255), i * 255, 1e-9));
    }

    [Fact]
    public void Layers_part_the_inks_from_the_sheet_outward()
    {
        Chart chart = OpticsChart.Make(["Cyan", "Black"], 11).Value;
        Assert.Equal(["colours under white", "white", "colours"], chart.Layers.Select(l => l.Name));
        Assert.Equal(Enumerable.Range(0, chart.InkNames.Count), chart.Layers.SelectMany(l => l.Inks));
        Assert.All(chart.Layers[0].Of(chart).InkNames, n => Assert.EndsWith(OpticsChart.Under, n, StringComparison.Ordinal));
        Assert.Equal(["White"], chart.Layers[1].Of(chart).InkNames);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(22)]
    public void Too_few_or_too_many_steps_are_refused(int steps) => Assert.Equal("steps", Assert.Single(OpticsChart.Make(Six, steps).Faults).Field);

    [Fact]
    public void Instructions_and_cautions_stand_on_every_sheet()
    {
        Chart chart = OpticsChart.Make(Six, 21).Value;
        IReadOnlyList<ChartSheet> sheets = ChartLayout.Make(chart, ChartSheetForm.For(new SizeMm(420, 300), ReadingWay.Hand, 1)).Value;
        foreach (ChartSheet sheet in sheets)
        {
            string words = string.Join(' ', sheet.Labels.Select(l => l.Text));
            foreach (string sentence in OpticsChart.Instructions.Concat(ChartLayout.Cautions))
                Assert.Contains(sentence, words, StringComparison.Ordinal);
        }
    }
}
