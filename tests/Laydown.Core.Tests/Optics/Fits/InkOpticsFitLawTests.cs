using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;
using Laydown.Core.Tests.Colour;
using Laydown.Optics.Fits;
using Laydown.Optics.Looks;
using Xunit;

namespace Laydown.Core.Tests.Optics.Fits;

public sealed class InkOpticsFitLawTests(ITestOutputHelper output)
{
    private static readonly Behind[] All = [Behind.Black, Behind.White, Behind.Lamp];

    public static TheoryData<Behind[]> Ways() => new(All, [Behind.Black, Behind.White], [Behind.Black, Behind.Lamp], [Behind.White, Behind.Lamp]);

    [Theory, MemberData(nameof(Ways))]
    public void Without_noise_any_two_of_the_three_ways_give_the_white_back(Behind[] ways)
    {
        ChartTruth truth = new();
        FittedInk white = Fit(truth, ways).Inks[0];
        Tell(truth, white);

        // The fit ends where the sum of squares no longer falls by 1e-11 of itself; slopes are differences of 1e-4.
        for (int band = 0; band < Bands.Count; band++)
        {
            Assert.Equal(truth.WhiteS[band], white.Scatter[band], 1e-3 * truth.WhiteS[band]);
            Assert.Equal(truth.WhiteK[band], white.Absorption[band], 2e-3);
        }

        for (int step = 0; step < white.Asked.Count; step++)
            Assert.Equal(truth.Curve(white.Asked[step]), white.Acting[step], 2e-3);
    }

    /// <summary>The ladder of noise: instrument and press together, three seeds each. No figure is a limit of a source; what is held is that the
    /// error stated covers the error made.</summary>
    [Theory]
    [InlineData(0.001, 0.002)]
    [InlineData(0.003, 0.01)]
    [InlineData(0.006, 0.02)]
    [InlineData(0.012, 0.04)]
    public void With_noise_the_error_made_stays_within_the_error_stated(double noise, double uneven)
    {
        foreach (int seed in (int[])[3, 14, 159])
        {
            ChartTruth truth = new() { Noise = noise, Uneven = uneven, Seed = seed };
            FittedInk white = Fit(truth, All).Inks[0];
            output.WriteLine(Invariant($"noise {noise}, uneven {uneven}, seed {seed}"));
            Tell(truth, white);

            // A bell curve leaves 0.3 % of its values beyond three errors; the common part of all bands is one draw, so all 72 may share it.
            int beyond = 0;
            for (int band = 0; band < Bands.Count; band++)
            {
                beyond += Math.Abs(white.Scatter[band] - truth.WhiteS[band]) > 3 * white.ScatterError[band] ? 1 : 0;
                beyond += white.Absorption[band] > 0 && Math.Abs(white.Absorption[band] - truth.WhiteK[band]) > 3 * white.AbsorptionError[band] ? 1 : 0;
            }

            Assert.InRange(beyond, 0, 4);
        }
    }

    [Fact]
    public void The_error_made_falls_with_the_noise()
    {
        double[] worst = [.. ((double[])[0.012, 0.006, 0.003, 0.0015]).Select(noise =>
        {
            ChartTruth truth = new() { Noise = noise };
            FittedInk white = Fit(truth, All).Inks[0];
            return Math.Sqrt(Enumerable.Range(0, Bands.Count).Average(b => Math.Pow((white.Scatter[b] / truth.WhiteS[b]) - 1, 2)));
        })];

        // Half the noise, the same draws: half the error as far as the model is straight there.
        for (int i = 1; i < worst.Length; i++)
            Assert.InRange(worst[i] / worst[i - 1], 0.4, 0.6);
    }

    [Fact]
    public void Colours_come_back_from_the_bare_sheet_from_white_and_from_under_it()
    {
        double[] colour = [.. Enumerable.Range(0, Bands.Count).Select(b => 0.05 + (2.6 * Math.Exp(-Math.Pow((Bands.Nm(b) - 620) / 60.0, 2))))];
        ChartTruth truth = new() { Colours = { ["Cyan"] = colour } };
        FittedOptics fitted = Fit(truth, All);
        FittedInk cyan = fitted.Find("Cyan")!;
        for (int band = 0; band < Bands.Count; band++)
            Assert.Equal(colour[band], cyan.Absorption[band], 2e-3);
        for (int step = 1; step < cyan.Asked.Count; step++)
            Assert.Equal(Math.Pow(cyan.Asked[step], 0.8), cyan.Acting[step], 2e-3);
        Assert.All(fitted.Residuals, r => Assert.True(r.DeltaE < 0.02, Invariant($"{r.Build.Words()} {r.Behind} {r.DeltaE}")));
        Assert.DoesNotContain(fitted.Findings, f => f.Code != "optics-unsettled");
    }

    [Fact]
    public void A_colour_that_shows_over_black_is_given_its_scatter_and_a_clear_one_none()
    {
        double[] colour = [.. Enumerable.Range(0, Bands.Count).Select(b => 0.05 + (1.8 * Math.Exp(-Math.Pow((Bands.Nm(b) - 450) / 60.0, 2))))];
        ChartTruth truth = new()
        {
            Colours = { ["Yellow"] = colour, ["Cyan"] = [.. colour.Reverse()] },
            Turbid = { ["Yellow"] = Bands.Flat(0.15) },
            Noise = 0.002,
            Seed = 8,
        };
        FittedOptics fitted = Fit(truth, All);
        FittedInk yellow = fitted.Find("Yellow")!;
        int beyond = Enumerable.Range(0, Bands.Count).Count(b => Math.Abs(yellow.Scatter[b] - 0.15) > 3 * yellow.ScatterError[b]);
        output.WriteLine(Invariant($"S of yellow {yellow.Scatter.Min():0.000} to {yellow.Scatter.Max():0.000}, error {yellow.ScatterError.Average():0.0000}, {beyond} bands beyond three errors"));
        Assert.InRange(beyond, 0, 3);
        Assert.All(fitted.Find("Cyan")!.Scatter, s => Assert.Equal(0, s));
    }

    [Fact]
    public void Sheet_and_backings_that_are_not_grey_are_taken_out()
    {
        double[] tint = [.. Enumerable.Range(0, Bands.Count).Select(b => 0.8 + (0.003 * b))], sheet = [.. Enumerable.Range(0, Bands.Count).Select(b => 0.85 + (0.002 * b))];
        ChartTruth truth = new() { White = tint, SheetT = sheet };
        FittedInk white = Fit(truth, All).Inks[0];
        for (int band = 0; band < Bands.Count; band++)
            Assert.Equal(truth.WhiteS[band], white.Scatter[band], 1e-3 * truth.WhiteS[band]);
    }

    public static TheoryData<string, string> Whites() => new(
        ("optics/materials/km-white-plus-10-colorants", "white"), ("optics/materials/artist-acrylics", "TitaniumWhite"));

    /// <summary>Whites of two public sets of paints, K beside S = 1, put on as thick as a full laydown of S·X = 6.</summary>
    [Theory, MemberData(nameof(Whites))]
    public void Whites_of_real_paints_come_back_with_noise(string set, string name)
    {
        double[] ratio = MaterialSets.Column(set + "-K.csv", name), scatter = MaterialSets.Column(set + "-S.csv", name);
        ChartTruth truth = new() { WhiteK = [.. ratio.Select(k => 6 * k)], WhiteS = [.. scatter.Select(s => 6 * s)], Noise = 0.003, Uneven = 0.01, Seed = 5 };
        FittedInk white = Fit(truth, All).Inks[0];
        Tell(truth, white);
        int beyond = Enumerable.Range(0, Bands.Count).Count(b => Math.Abs(white.Scatter[b] - truth.WhiteS[b]) > 3 * white.ScatterError[b]);
        Assert.InRange(beyond, 0, 2);
    }

    /// <summary>Every colorant of the public set as a clear film of K·X up to 3.</summary>
    [Fact]
    public void Colorants_of_real_paints_come_back_with_noise()
    {
        Dictionary<string, double[]> colours = [];
        foreach (int i in Enumerable.Range(1, 10))
        {
            double[] k = MaterialSets.Column("optics/materials/km-white-plus-10-colorants-K.csv", Invariant($"colorant{i}"));
            colours[Invariant($"Ink {i}")] = [.. k.Select(v => 3 * v / k.Max())];
        }

        ChartTruth truth = new() { Colours = colours, Noise = 0.003, Seed = 9 };
        FittedOptics fitted = Fit(truth, All);
        foreach ((string name, double[] k) in colours)
        {
            FittedInk ink = fitted.Find(name)!;
            int beyond = Enumerable.Range(0, Bands.Count).Count(b => ink.Absorption[b] > 0 && Math.Abs(ink.Absorption[b] - k[b]) > 3 * ink.AbsorptionError[b]);
            output.WriteLine(Invariant($"{name}: K off by at most {Enumerable.Range(0, Bands.Count).Max(b => Math.Abs(ink.Absorption[b] - k[b])):0.0000}, {beyond} bands beyond three errors"));
            Assert.InRange(beyond, 0, 3);
        }
    }

    private static FittedOptics Fit(ChartTruth truth, params Behind[] ways) =>
        InkOpticsFit.Fit(truth.Table(ways), LookSheet.Clear(0.92), TestContext.Current.CancellationToken).Value;

    private void Tell(ChartTruth truth, FittedInk white)
    {
        double s = Enumerable.Range(0, Bands.Count).Max(b => Math.Abs((white.Scatter[b] / truth.WhiteS[b]) - 1));
        double k = Enumerable.Range(0, Bands.Count).Max(b => Math.Abs(white.Absorption[b] - truth.WhiteK[b]));
        output.WriteLine(Invariant($"S off by at most {s:0.00000} of itself, K by {k:0.00000}; mean error S {white.ScatterError.Average():0.00000}, K {white.AbsorptionError.Average():0.00000}"));
    }
}
