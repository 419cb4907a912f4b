using Laydown.Colour.Calibration;
using Laydown.Colour.Readings;

namespace Laydown.Core.Tests.Colour.Calibration;

/// <summary>Each kind of drift leads to its verdict.</summary>
public sealed class DriftCheckLawTests
{
    private static readonly ReadingSet Kept = SyntheticPress.Wedges();

    [Fact]
    public void The_same_reading_says_use()
    {
        DriftReport report = Check(Kept);
        Assert.Equal(DriftVerdict.Use, report.Verdict);
        Assert.All(report.Patches, p => Assert.Equal(0, p.Difference));
    }

    [Fact]
    public void More_dot_gain_says_relinearise_with_the_ink_and_its_sign()
    {
        DriftReport report = Check(SyntheticPress.Wedges(gain: 0.2));
        Assert.Equal(DriftVerdict.Relinearise, report.Verdict);
        Assert.All(report.Inks, i => Assert.True(i.ToneChangePercent > 3 && i.SolidDifference < 1e-9));
    }

    [Fact]
    public void A_little_dot_gain_is_still_used() => Assert.Equal(DriftVerdict.Use, Check(SyntheticPress.Wedges(gain: 0.155)).Verdict);

    [Fact]
    public void Another_stock_or_another_full_ink_says_recharacterise()
    {
        ReadingSet stock = Kept with
        {
            Patches = [.. Kept.Patches.Select(p => p.Inks.Sum() > 0 ? p
            : p with { Lab = p.Lab with { B = p.Lab.B + 4 } })]
        };
        Assert.Equal(DriftVerdict.Recharacterise, Check(stock).Verdict);
        ReadingSet solid = Kept.With("Magenta20", p => p with { Lab = p.Lab with { L = p.Lab.L + 6 } });
        DriftReport report = Check(solid);
        Assert.Equal(DriftVerdict.Recharacterise, report.Verdict);
        Assert.Contains("Magenta", report.Reasons[0], StringComparison.Ordinal);
    }

    private static DriftReport Check(ReadingSet now) => DriftCheck.Compare(Kept, now, DriftLimits.Usual, "now").Value;
}
