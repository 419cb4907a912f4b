using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Optics.Looks;
using Laydown.Plan.Build;
using Xunit;

namespace Laydown.Core.Tests.Plan;

/// <summary>What the derived orders promise, held against the optics of the layers.</summary>
public sealed class StackLightLawTests
{
    private static readonly LookSheet Acrylic = LookSheet.Clear(0.92);
    private static readonly LookInk White = LookInk.White(8.0);
    private static readonly LookInk[] Inks = [.. new[] { ProcessInk.Cyan, ProcessInk.Magenta, ProcessInk.Yellow }.Select(i => LookInk.Colour(GenericUvInks.Density(i)))];
    private static readonly LookInk Black = LookInk.Colour(GenericUvInks.Density(ProcessInk.Black, 1.34));
    private static readonly SpectralWeights Room = SpectralWeights.For(Illuminant.D50), Lamp = SpectralWeights.For(Illuminant.LedB4);

    /// <summary>
    /// Mean ΔE00 of 124 colours between day and lit look, each adapted to its own white: without a back picture 12.5 to 15.9, the more the thinner the
    /// white; at the best of all strengths 3.5 to 5. The strength derived is within 0.2 of the best, which lies between whole tenths.
    /// </summary>
    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(8)]
    [InlineData(15)]
    [InlineData(20)]
    public void The_same_picture_behind_the_white_at_the_strength_derived_looks_alike_by_day_and_lit(double scatter)
    {
        double without = DayAgainstLit(0, scatter), derived = DayAgainstLit(BackStrength.BalancedPercent(scatter) / 100, scatter);
        double best = Enumerable.Range(0, 21).Min(i => DayAgainstLit(i / 20.0, scatter));
        Assert.InRange(derived, best - 0.2, best + 0.2);
        Assert.True(without > 2.5 * derived, Invariant($"{without:0.00} without, {derived:0.00} with"));
    }

    [Fact]
    public void Block_out_between_two_whites_lets_under_one_percent_through_and_pales_neither_picture()
    {
        StackOptics open = new(Acrylic, Layers(Inks, White, White, Inks), 0.5), shut = new(Acrylic, Layers(Inks, White, Black, White, Inks), 0.5);
        double[] bare = [0, 0, 0, 1, 1, 0, 0, 0], stopped = [0, 0, 0, 1, 1, 1, 0, 0, 0];
        (double day, double through) = Luminance(open, bare);
        (double dayShut, double throughShut) = Luminance(shut, stopped);
        Assert.InRange(throughShut, 0, 1);
        Assert.True(through > 8 * throughShut, Invariant($"{through:0.00} %, {throughShut:0.00} %"));
        Assert.InRange(dayShut / day, 0.85, 1);
    }

    /// <summary>The plain formula against the whole optics, which mix in light that a thin white does not spread: 4.1 points of 100 at
    /// S·X 2, under 1 from S·X 4 on.</summary>
    [Theory]
    [InlineData(2, 4.5)]
    [InlineData(4, 1)]
    [InlineData(8, 1)]
    [InlineData(15, 1)]
    public void White_with_black_behind_it_returns_what_the_plain_formula_says(double scatter, double points)
    {
        StackOptics optics = new(Acrylic, Layers(LookInk.Colour(Bands.Flat(4)), LookInk.White(scatter)), 0.5);
        (double day, _) = Luminance(optics, [1, 1]);
        Assert.InRange((WhiteOverBlack.Reflectance(scatter) * 100) - day, -points, points);
    }

    [Fact]
    public void No_white_returns_nothing_and_more_white_more()
    {
        Assert.Equal(0, WhiteOverBlack.Reflectance(0));
        Assert.True(WhiteOverBlack.Reflectance(4) < WhiteOverBlack.Reflectance(8) && WhiteOverBlack.Reflectance(8) < WhiteOverBlack.Reflectance(double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => WhiteOverBlack.Reflectance(double.NaN));
    }

    [Fact]
    public void Colour_straight_on_block_out_returns_no_picture()
    {
        StackOptics onBlack = new(Acrylic, Layers(White, Black, Inks), 0.5);
        (double bare, _) = Luminance(onBlack, [1, 1, 0, 0, 0]);
        Assert.InRange(bare, 0, 1);
    }

    private static double DayAgainstLit(double behind, double scatter)
    {
        StackOptics optics = new(Acrylic, Layers(Inks, LookInk.White(scatter), Inks), 0.8);
        (Xyz dayWhite, Xyz litWhite) = See(optics, [0, 0, 0, 1, 0, 0, 0]);
        double[] steps = [0, 0.25, 0.5, 0.75, 1];
        return (from c in steps from m in steps from y in steps where c + m + y > 0 select (c, m, y)).Average(p =>
        {
            (Xyz day, Xyz lit) = See(optics, [behind * p.c, behind * p.m, behind * p.y, 1, p.c, p.m, p.y]);
            return Ciede2000.Between(Lab.From(day, dayWhite), Lab.From(lit, litWhite));
        });
    }

    private static LookLayer[] Layers(params object[] printed) =>
        [.. printed.Select(l => new LookLayer(LookFace.First, l is LookInk ink ? [ink] : (LookInk[])l))];

    private static (double DayPercent, double ThroughPercent) Luminance(StackOptics optics, double[] coverages)
    {
        (Xyz day, Xyz through) = See(optics, coverages);
        return (100 * day.Y / Room.White.Y, 100 * through.Y / Lamp.White.Y);
    }

    private static (Xyz Day, Xyz Through) See(StackOptics optics, double[] coverages)
    {
        double[] reflectance = new double[Bands.Count], transmittance = new double[Bands.Count];
        optics.Solve(coverages, reflectance, transmittance);
        return (Room.Of(reflectance), Lamp.Of(transmittance));
    }
}
