using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Measures;

namespace Laydown.Core.Tests.Colour;

/// <summary>Repeats, comparison with the chart, swapped patches.</summary>
public sealed class ReadingsRoomLawTests
{
    [Fact]
    public void An_outlier_of_three_is_named_and_left_out()
    {
        AveragedReadings mean = RepeatAverage.Of(Set([Read("a", [0], 95), Read("b", [1], 50), Read("b", [1], 50.2), Read("b", [1], 61)]));
        Assert.Equal(["a", "b"], mean.Set.Patches.Select(p => p.Id));
        Assert.Equal(50.1, mean.Set.Patches[1].Lab.L, tolerance: 1e-12);
        Assert.Equal([2], mean.Spreads[1].Outliers);
        Finding finding = Assert.Single(mean.Findings);
        Assert.Equal("reading-outlier", finding.Code);
        Assert.Contains("Patch b: reading 3 of 3", finding.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(new double[] { 50, 61 })]
    [InlineData(new double[] { 50, 50.4, 49.6 })]
    [InlineData(new double[] { 50, 51.5, 48.4, 53, 47 })]
    public void Two_readings_and_evenly_spread_ones_have_no_outlier(double[] lightness)
    {
        AveragedReadings mean = RepeatAverage.Of(Set([.. lightness.Select(l => Read("b", [1], l))]));
        Assert.Empty(mean.Findings);
        Assert.Equal(lightness.Average(), mean.Set.Patches[0].Lab.L, tolerance: 1e-12);
    }

    [Fact]
    public void Spectra_are_averaged_and_the_colour_is_that_of_the_mean()
    {
        Patch One(double level) => new("s", [1], ReadingColour.LabOf(new(380, 10, Bands.Flat(level))), new(380, 10, Bands.Flat(level)));
        AveragedReadings mean = RepeatAverage.Of(Set([One(0.2), One(0.21), One(0.22), One(0.6)]));
        Assert.All(mean.Set.Patches[0].Spectrum!.Values, v => Assert.Equal(0.21, v, tolerance: 1e-12));
        Assert.Equal(ReadingColour.LabOf(new(380, 10, Bands.Flat(0.21))).L, mean.Set.Patches[0].Lab.L, tolerance: 1e-9);
        Assert.Equal([3], mean.Spreads[0].Outliers);
        Assert.True(mean.Spreads[0].FromMean[3] > 20);
    }

    [Fact]
    public void A_set_that_is_its_chart_has_no_finding_and_each_departure_one()
    {
        WantedPatch[] chart = [new("1", [0]), new("2", [0.5]), new("3", [1])];
        Assert.Empty(ChartComparison.Of(chart, Set([Read("1", [0], 95), Read("2", [0.502], 70), Read("3", [1], 50), Read("3", [1], 51)])));
        IReadOnlyList<Finding> found = ChartComparison.Of(chart, Set([Read("1", [0], 95), Read("1", [0.3], 80), Read("2", [0.6], 70), Read("9", [1], 50)]));
        Assert.Equal(["reading-id-twice", "patch-inks", "patch-unknown", "patch-missing"], found.Select(f => f.Code));
        Assert.Contains("Patch 3", found[3].What, StringComparison.Ordinal);
        Assert.Equal("60 %", found[1].Measured);
        Assert.Equal("50 %", found[1].Wanted);
        Assert.Equal("chart-id-twice", Assert.Single(ChartComparison.Of([new("1", [0]), new("1", [1])], Set([Read("1", [0], 95)]))).Code);
    }

    [Fact]
    public void Swapped_patches_are_named_as_a_pair_and_a_lone_misfit_alone()
    {
        // A wedge of 21 steps; the model is off by 0.3 everywhere. 5 and 15 are swapped, 10 is plainly wrong.
        Lab[] predicted = [.. Enumerable.Range(0, 21).Select(i => new Lab(95 - (2 * i), i, 0))];
        Patch[] patches = [.. predicted.Select((p, i) => new Patch(Invariant($"{i}"), [i / 20.0], p with { L = p.L + 0.3 }, null))];
        Assert.Empty(PatchMisfits.Find(Set(patches), predicted));
        (patches[5], patches[15]) = (patches[5] with { Lab = patches[15].Lab }, patches[15] with { Lab = patches[5].Lab });
        patches[10] = patches[10] with { Lab = new(20, 0, 60) };
        IReadOnlyList<Finding> found = PatchMisfits.Find(Set(patches), predicted);
        Assert.Equal(["patches-swapped", "patch-misfit"], found.Select(f => f.Code));
        Assert.Contains("5", found[0].What, StringComparison.Ordinal);
        Assert.Contains("15", found[0].What, StringComparison.Ordinal);
        Assert.Contains("Patch 10 ", found[1].What, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => PatchMisfits.Find(Set(patches), []));
    }

    private static ReadingSet Set(IReadOnlyList<Patch> patches) => new("test", ["Black"], MeasuredHow.Unsaid, patches);

    private static Patch Read(string id, double[] inks, double lightness) => new(id, inks, new(lightness, 0, 0), null);
}
