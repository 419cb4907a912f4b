using Laydown.Colour.Calibration;
using Laydown.Colour.Readings;
using Laydown.Measures;

namespace Laydown.Core.Tests.Colour.Calibration;

/// <summary>Readings that no calibration can be made from are refused with what and where.</summary>
public sealed class CalibrationRefusalTests
{
    private static readonly ReadingSet Good = SyntheticPress.Wedges();

    [Fact]
    public void Swapped_steps_name_ink_and_step()
    {
        Patch one = Good.Patches.First(p => p.Id == "Cyan8"), other = Good.Patches.First(p => p.Id == "Cyan12");
        ReadingSet swapped = Good.With("Cyan8", p => p with { Lab = other.Lab }).With("Cyan12", p => p with { Lab = one.Lab });
        InputFault fault = Assert.Single(Wedges.From(swapped, "wedge.txt").Faults);
        Assert.Equal("wedge of Cyan", fault.Field);
        Assert.Contains("step 45 %", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Missing_steps_solid_and_paper_are_named()
    {
        ReadingSet gap = Good with { Patches = [.. Good.Patches.Where(p => !(p.Inks[2] > 0.3 && p.Inks[2] < 0.7))] };
        Assert.Contains("between 30 % and 70 %", Assert.Single(Wedges.From(gap, "w").Faults).Found, StringComparison.Ordinal);
        Assert.Contains("95 %", Assert.Single(Wedges.From(Good.With("Black20", _ => null), "w").Faults).Found, StringComparison.Ordinal);
        ReadingSet bare = Good with { Patches = [.. Good.Patches.Where(p => p.Inks.Sum() > 0)] };
        Assert.Equal(4, Wedges.From(bare, "w").Faults.Count);
    }

    [Fact]
    public void A_reading_that_is_no_number_is_named() => Assert.Equal("patch Yellow3",
        Assert.Single(Wedges.From(Good.With("Yellow3", p => p with { Lab = p.Lab with { A = double.NaN } }), "w").Faults).Field);

    [Fact]
    public void A_wedge_that_falls_before_its_limit_is_not_linearised()
    {
        Wedge turning = new("Green", [.. Enumerable.Range(0, 11).Select(s => new WedgeStep(s / 10.0, new(90 - (s < 8 ? 5 * s
            : 70 - (5 * s)), 0, 0), 1))], []);
        Assert.False(Linearisation.Make(turning, LinearisationAim.ToneValue, 100, "w").IsTaken);
        Assert.True(Linearisation.Make(turning, LinearisationAim.ToneValue, 70, "w").IsTaken);
    }

    [Theory]
    [InlineData(0), InlineData(-5), InlineData(101), InlineData(double.NaN), InlineData(3)]
    public void A_limit_that_leaves_nothing_is_refused(double limit) =>
        Assert.False(Linearisation.Make(Wedges.From(Good, 0, "w").Value, LinearisationAim.ToneValue, limit, "w").IsTaken);

    [Theory]
    [InlineData(0), InlineData(10), InlineData(double.NaN)]
    public void An_operators_limit_that_leaves_nothing_is_refused(double limit) =>
        Assert.False(InkLimitFinder.Find(Wedges.From(Good, 0, "w").Value, limit, "w").IsTaken);

    [Fact]
    public void No_ladder_or_an_unknown_clean_patch_is_refused() =>
        Assert.False(TotalLimitFinder.Find(Good, null, "w").IsTaken);

    [Fact]
    public void Drift_needs_the_same_inks_and_patches()
    {
        ReadingSet others = Good with { InkNames = ["Cyan", "Magenta", "Yellow", "Green"] };
        Assert.Equal("inks", Assert.Single(DriftCheck.Compare(Good, others, DriftLimits.Usual, "n").Faults).Field);
        InputFault fault = Assert.Single(DriftCheck.Compare(Good, Good.With("Magenta20", _ => null), DriftLimits.Usual, "n").Faults);
        Assert.Contains("Magenta", fault.Field, StringComparison.Ordinal);
    }
}
