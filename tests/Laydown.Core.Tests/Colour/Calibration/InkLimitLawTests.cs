using Laydown.Colour.Calibration;
using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;

namespace Laydown.Core.Tests.Colour.Calibration;

/// <summary>Limits are found where wedges and ladders made for it turn.</summary>
public sealed class InkLimitLawTests
{
    [Fact]
    public void Chroma_that_stops_rising_ends_the_ink()
    {
        FoundLimit limit = Find(a => new(90 - (40 * a), 70 * Math.Min(a, 0.8), -3));
        Assert.Equal((LimitReason.ChromaStopsRising, 80.0), (limit.Reason, Math.Round(limit.Limit.Value, 6)));
    }

    [Fact]
    public void Hue_that_turns_ends_the_ink()
    {
        // Hue stands still up to 60 % and then turns 20° to 100 %: 6° are reached 12 % later.
        FoundLimit limit = Find(a => new(90 - (40 * a), 70 * a * Math.Cos(Hue(a)), 70 * a * Math.Sin(Hue(a))));
        Assert.Equal(LimitReason.HueTurns, limit.Reason);
        Assert.Equal(72, limit.Limit.Value, 0.5);
        static double Hue(double a) => Math.Max(0, a - 0.6) * 50 * Math.PI / 180;
    }

    [Fact]
    public void Density_that_hardly_rises_ends_a_black()
    {
        FoundLimit limit = Find(a => new(92 - (75 * Math.Min(a, 0.7)), 0, 0));
        Assert.Equal((LimitReason.DensitySlope, 70.0), (limit.Reason, Math.Round(limit.Limit.Value, 6)));
    }

    [Fact]
    public void The_operator_can_only_lower_a_limit_and_a_good_ink_has_none()
    {
        Assert.Equal((LimitReason.Operator, 75.0), (Find(Good, 75).Reason, Find(Good, 75).Limit.Value));
        Assert.Equal((LimitReason.None, 100.0), (Find(Good).Reason, Find(Good).Limit.Value));
        Assert.Equal(LimitReason.ChromaStopsRising, Find(a => new(90 - (40 * a), 70 * Math.Min(a, 0.8), -3), 90).Reason);
        static Lab Good(double a) => new(90 - (40 * a), 70 * a, -3 * a);
    }

    [Fact]
    public void A_total_ends_where_overprints_stop_changing_and_at_the_largest_clean_patch()
    {
        Patch[] ladder = [.. Enumerable.Range(1, 10).Select(s => new Patch("o" + s, [s / 10.0, s / 10.0, s / 10.0],
            new(60 - (5 * Math.Min(s, 8)), 0, 0), null))];
        ReadingSet set = new("ladder", ["C", "M", "Y"], MeasuredHow.Unsaid, ladder);
        FoundLimit measured = TotalLimitFinder.Find(set, null, "ladder").Value;
        Assert.Equal((LimitReason.OverprintStopsChanging, 240.0), (measured.Reason, Math.Round(measured.Limit.Value, 6)));
        FoundLimit marked = TotalLimitFinder.Find(set, "o6", "ladder").Value;
        Assert.Equal((LimitReason.LargestCleanPatch, 180.0), (marked.Reason, Math.Round(marked.Limit.Value, 6)));
        Assert.Equal(LimitReason.OverprintStopsChanging, TotalLimitFinder.Find(set, "o9", "ladder").Value.Reason);
    }

    private static FoundLimit Find(Func<double, Lab> ink, double operatorPercent = 100) => InkLimitFinder.Find(
        new("ink", [.. Enumerable.Range(0, 21).Select(s => new WedgeStep(s / 20.0, ink(s / 20.0), 1))], []), operatorPercent,
            "wedge").Value;
}
