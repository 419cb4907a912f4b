using Laydown.Colour.Fits;
using Laydown.Colour.Gamuts;
using Laydown.Colour.Inversion;
using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Edges.Tests.Icc;
using Laydown.Formats.Icc;
using Laydown.Formats.Readings;

namespace Laydown.Edges.Tests.Readings;

/// <summary>
/// A print condition made from published readings [FOGRA39] [CGATS21]: residuals, round trip through the profile, greys and links, held
/// against figures reached by others on the same files (means of held-out patches 0.091, round trips 0.155 to 0.199).
/// </summary>
public sealed class PublicChartsPublishedTests
{
    private static readonly InkLimits Limits = new([1, 1, 1, 1], 3);
    private static readonly Lazy<FittedPrint> Offset = new(() => Fit("FOGRA39L.cgats.txt"));
    private static readonly Lazy<byte[]> Profile = new(() => OutputProfile.Write(
        ProfileTableMaker.Make(new GridModel(Offset.Value.Grid), Limits, BlackPolicy.Medium, 9, 33, CancellationToken.None), "offset", "none",
        OutputProfileOptions.Usual with { Edition = IccEdition.V4, Limits = Limits }));

    [Theory]
    [InlineData("FOGRA39L.cgats.txt", 0.09, 0.21, 3)]
    [InlineData("TR003.cgats.txt", 0.09, 0.21, 3)]
    [InlineData("CGATS21-2-CRPC7.csv", 0.09, 0.35, 3)]
    public void Patches_are_predicted_from_the_others(string chart, double mean, double p95, double max)
    {
        ResidualSummary held = (chart.StartsWith("FOGRA39", StringComparison.Ordinal) ? Offset.Value : Fit(chart)).CrossValidated;
        Assert.True(held.Count > 1500 && held.Mean <= mean && held.P95 <= p95 && held.Max <= max, held.ToString());
    }

    [Fact]
    public void The_cellular_model_predicts_what_is_not_a_node()
    {
        // 0.36 mean and 0.96 at 95 % are the worst of four charts that were reached with 232 nodes.
        ReadingSet readings = Readings("FOGRA39L.cgats.txt");
        ResidualSummary held = PrintFit.Fit("offset", readings, new(FitKind.Cellular, 3, 1, false), null, TestContext.Current.CancellationToken)
            .Value.CrossValidated;
        Assert.True(held.Mean <= 0.36 && held.P95 <= 0.96, held.ToString());
    }

    [Fact]
    public void Colours_come_back_through_profile_and_model()
    {
        using IccTransform there = Transform();
        GridModel model = new(Offset.Value.Grid);
        List<double> errors = [];
        for (int i = 1; errors.Count < 2000; i++)
        {
            double[] inks = Scatter(i);
            if (inks.Sum() > Limits.Total)
                continue;
            var wanted = Lab.From(model.ToXyz(inks), model.White);
            there.Row([wanted.L, wanted.A, wanted.B], inks);
            Assert.True(inks.Sum() <= Limits.Total + 0.01);
            errors.Add(Ciede2000.Between(wanted, Lab.From(model.ToXyz(inks), model.White)));
        }

        ResidualSummary trip = ResidualSummary.Of(errors);
        Assert.True(trip.Mean <= 0.15 && trip.P95 <= 0.6 && trip.Max <= 2, trip.ToString());
    }

    [Fact]
    public void Greys_are_grey_and_no_ink_turns_back()
    {
        using IccTransform there = Transform();
        GridModel model = new(Offset.Value.Grid);
        double[] last = new double[4], before = new double[4];
        double darkest = ProfileTableMaker.DarkestNeutral(new(model, Limits, BlackPolicy.Medium)).L;
        for (double l = 100; l > darkest + 1; l -= 0.5)
        {
            double[] inks = new double[4];
            there.Row([l, 0, 0], inks);
            Assert.True(Lab.From(model.ToXyz(inks), model.White).Chroma <= 1, Invariant($"L* {l}"));
            for (int ink = 0; ink < 4; ink++)
            {
                // Lines between nodes leave up to half a percent of an ink of waviness.
                Assert.True(inks[ink] >= last[ink] - 0.005, Invariant($"L* {l}: ink {ink} {last[ink]} → {inks[ink]}"));
                if (l < 99)
                    Assert.True(Math.Abs(inks[ink] - (2 * last[ink]) + before[ink]) < 0.02, Invariant($"L* {l}: ink {ink} bends"));
            }

            (before, last) = (last, inks);
        }
    }

    [Fact]
    public void A_link_from_RGB_is_as_good_as_the_exact_way()
    {
        GridModel model = new(Offset.Value.Grid);
        InkInverse inverse = ProfileTableMaker.InverseFor(model, Limits, BlackPolicy.Medium, InkWishes.FourInks);
        LinkChoice choice = LinkChoice.Smallest(
            LinkMaker.FromRgb(inverse, Offset.Value.InkNames, Gamut.Of(model, Limits.PerInk, Limits.Total)), null, TestContext.Current.CancellationToken);
        Assert.True(choice.MeanError <= 0.3 && choice.P99Error <= 1, Invariant($"{choice.MeanError} {choice.P99Error}"));
    }

    private static IccTransform Transform() => IccTransform.Precise(
        IccProfile.Lab, IccProfile.Read("offset.icc", Profile.Value).Value, IccIntent.RelativeColorimetric, false).Value;

    private static FittedPrint Fit(string chart) =>
        PrintFit.Fit(chart, Readings(chart), new(FitKind.Regression, 5, 1, false), null, CancellationToken.None).Value;

    private static ReadingSet Readings(string chart) => ReadingsFile.Read(chart, File.ReadAllBytes(IccData.PathOf(chart))).Value;

    private static double[] Scatter(int index) => [.. Enumerable.Range(0, 4).Select(k =>
    {
        double value = index * Math.Sqrt(new[] { 2, 3, 5, 7, 11, 13, 17, 19 }[k]);
        return value - Math.Floor(value);
    })];
}
