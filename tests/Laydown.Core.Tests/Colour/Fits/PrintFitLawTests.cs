using Laydown.Colour.Fits;
using Laydown.Colour.Inks;
using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Core.Tests.Colour.Fits;

/// <summary>What a fit must hold whatever the print.</summary>
public sealed class PrintFitLawTests
{
    private static readonly string[] Four = ["Cyan", "Magenta", "Yellow", "Black"];

    [Fact]
    public void A_print_that_is_Neugebauers_is_found_again()
    {
        // 16 overprints and wedges of a model with n = 2 and no dot gain: all the model asks for, so nothing is left but rounding.
        NeugebauerModel truth = Prints.Model();
        List<double[]> mixtures = [.. Enumerable.Range(0, 16).Select(j => Enumerable.Range(0, 4).Select(i => (double)((j >> i) & 1)).ToArray())];
        for (int ink = 0; ink < 4; ink++)
            mixtures.AddRange(Enumerable.Range(1, 9).Select(s => Enumerable.Range(0, 4).Select(i => i == ink ? s / 10.0 : 0).ToArray()));
        mixtures.AddRange(Enumerable.Range(1, 60).Select(Prints.Scatter));
        ReadingSet readings = Set(Four, mixtures, m => Lab.From(truth.ToXyz(m), WhitePoints.Pcs));

        FittedPrint fit = PrintFit.Fit("known.txt", readings, new(FitKind.Neugebauer, 5, 1, false), null, TestContext.Current.CancellationToken).Value;

        // The model mixes 36 bands, the fit three roots: what is left is that difference, under 1 ΔE00 in the mean for these inks.
        Assert.True(fit.Fitted.Mean < 1, fit.Fitted.ToString());
        GridModel model = new(fit.Grid);
        foreach (double[] solid in mixtures.Take(16))
            Assert.True(Ciede2000.Between(model.ToLab(solid), Lab.From(truth.ToXyz(solid), WhitePoints.Pcs)) < 0.01);
    }

    [Fact]
    public void The_regression_predicts_what_it_has_not_seen()
    {
        // Noise of ±0.05 was laid on L*, a*, b*.
        GridModel model = SixInks.Model;
        double[] errors = [.. Enumerable.Range(5000, 400).Select(i => SixInks.Mix(i, 6)).Where(m => m.Sum() <= 2.6)
            .Select(m => Ciede2000.Between(SixInks.Look(m), model.ToLab(m)))];
        Assert.True(errors.Average() < 0.5, Invariant($"{errors.Average()}"));
        Assert.True(SixInks.Fitted.CrossValidated.Mean < 0.6, SixInks.Fitted.CrossValidated.ToString());
        Assert.Equal(SixInks.Fitted.CrossValidated.Max, SixInks.Fitted.Patches[0].DeltaE00);
    }

    [Fact]
    public void The_same_readings_give_the_same_model()
    {
        ReadingSet readings = SixInks.Readings(0.1, 120);
        FitChoices choices = new(FitKind.Regression, 2, 1, false);
        FittedPrint one = PrintFit.Fit("a.txt", readings, choices, null, TestContext.Current.CancellationToken).Value;
        FittedPrint other = PrintFit.Fit("a.txt", readings, choices, null, TestContext.Current.CancellationToken).Value;
        Assert.Equal(one.Grid.Roots, other.Grid.Roots);
        Assert.Equal(one.CrossValidated, other.CrossValidated);
    }

    [Fact]
    public void Slopes_are_those_of_the_colour()
    {
        GridModel model = SixInks.Model;
        Xyz[] slopes = new Xyz[6];
        for (int i = 1; i <= 50; i++)
        {
            double[] inks = [.. SixInks.Mix(i, 6).Select(v => 0.01 + (0.98 * v))];
            Xyz at = model.ToXyz(inks, slopes);
            Assert.Equal(model.ToXyz(inks).Y, at.Y, 1e-9);
            for (int ink = 0; ink < 6; ink++)
            {
                // One-sided steps well inside a cell; cells meet with a kink, so a step across one may miss by more: skip those.
                double[] up = [.. inks], down = [.. inks];
                up[ink] += 1e-6;
                down[ink] -= 1e-6;
                double right = (model.ToXyz(up).Y - at.Y) / 1e-6, left = (at.Y - model.ToXyz(down).Y) / 1e-6;
                if (Math.Abs(right - left) < 0.05 * (1 + Math.Abs(left)))
                    Assert.Equal((left + right) / 2, slopes[ink].Y, 0.02 * (1 + Math.Abs(left)));
            }
        }
    }

    [Fact]
    public void Readings_without_paper_or_a_solid_are_refused_by_name()
    {
        ReadingSet whole = SixInks.Readings(0, 100);
        ReadingSet noPaper = whole with { Patches = [.. whole.Patches.Where(p => p.Inks.Sum() > 0)] };
        ReadingSet noSolid = whole with { Patches = [.. whole.Patches.Where(p => !(p.Inks[2] == 1 && p.Inks.Sum() == 1))] };
        Assert.Contains(Refusal(noPaper), f => f.Field == "paper");
        Assert.Contains(Refusal(noSolid), f => f.Field == "solid of Yellow");
        Assert.Contains(Refusal(whole with { Patches = [.. whole.Patches.Take(9)] }), f => f.Field == "patches" || f.Field.StartsWith("solid", StringComparison.Ordinal));
    }

    private static IReadOnlyList<InputFault> Refusal(ReadingSet readings) =>
        PrintFit.Fit("six.txt", readings, FitChoices.Usual, null, TestContext.Current.CancellationToken).Faults;

    private static ReadingSet Set(string[] names, IEnumerable<double[]> mixtures, Func<double[], Lab> look) =>
        new("known", names, MeasuredHow.Unsaid, [.. mixtures.Select((m, i) => new Patch(Invariant($"{i}"), m, look(m), null))]);
}
