using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Optics.Fits;
using Laydown.Optics.Looks;
using Xunit;

namespace Laydown.Core.Tests.Optics.Fits;

public sealed class InkOpticsFitRefusalTests
{
    private static readonly ChartTruth Truth = new() { Steps = 5 };

    [Theory]
    [InlineData(Behind.Black)]
    [InlineData(Behind.White)]
    [InlineData(Behind.Lamp)]
    public void One_way_of_reading_cannot_tell_K_from_S(Behind way)
    {
        InputFault fault = Assert.Single(Fit(Truth.Table(way)).Faults);
        Assert.Equal("White", fault.Field);
        Assert.Contains(BehindWords.Way(way), fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_full_laydown_K_and_S_refer_to_nothing()
    {
        OpticsTable table = Truth.Table(Behind.Black, Behind.Lamp);
        Assert.Contains(Fit(table with { Readings = [.. table.Readings.Where(r => r.Build.White < 1)] }).Faults, f => f.Wanted.StartsWith("at least one full", StringComparison.Ordinal));
    }

    [Fact]
    public void A_chart_without_ink_is_refused()
    {
        OpticsTable table = Truth.Table(Behind.Black, Behind.Lamp);
        Assert.Equal("inks", Assert.Single(Fit(table with { Readings = [.. table.Readings.Where(r => r.Build.White == 0)] }).Faults).Field);
    }

    [Fact]
    public void A_value_that_is_no_share_of_light_is_refused_by_patch_and_band()
    {
        OpticsTable table = Change(Truth.Table(Behind.Black, Behind.Lamp), r => r.Id == "P004" && r.Behind == Behind.Lamp, (v, band) => band == 7 ? double.NaN : v);
        InputFault fault = Assert.Single(Fit(table).Faults);
        Assert.Equal("P004", fault.Field);
        Assert.Contains("through, 450 nm", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_light_aperture_that_loses_light_at_its_edge_is_flagged()
    {
        OpticsTable table = Truth.Table(Behind.Black, Behind.White, Behind.Lamp);
        Assert.DoesNotContain("optics-edge-loss", Codes(table));
        Assert.Contains("optics-edge-loss", Codes(Change(table, r => r.Behind == Behind.Lamp && r.Build.White > 0, (v, _) => v * 0.9)));
    }

    [Fact]
    public void Backings_that_were_mixed_up_are_flagged() => Assert.Contains("optics-backings-crossed", Codes(Truth.Table(Behind.Black, Behind.White) is var t
        ? t with { Readings = [.. t.Readings.Select(r => r.Id == "P005" ? r with { Behind = r.Behind == Behind.Black ? Behind.White : Behind.Black } : r)] } : t));

    [Fact]
    public void Steps_that_turn_back_are_flagged() =>
        Assert.Contains("optics-not-monotone", Codes(Change(Truth.Table(Behind.Black, Behind.Lamp), r => r.Build.White == 0.6, (v, _) => v * 0.7)));

    [Fact]
    public void More_light_out_than_in_is_flagged() =>
        Assert.Contains("optics-gains-light", Codes(Change(Truth.Table(Behind.Black, Behind.Lamp), r => r.Build.White > 0, (v, _) => v * 1.25)));

    [Fact]
    public void A_white_that_hides_its_backing_asks_for_readings_through()
    {
        ChartTruth dense = new() { Steps = 5, WhiteS = Bands.Flat(60) };
        Assert.Contains("optics-weak", Codes(dense.Table(Behind.Black, Behind.White)));
        Assert.DoesNotContain("optics-weak", Codes(dense.Table(Behind.Black, Behind.White, Behind.Lamp)));
    }

    /// <summary>Twice the thickness times the tangent of 41.8°: 5.4 mm for 3 mm of acrylic (n = 1.5).</summary>
    [Fact]
    public void A_patch_narrower_than_the_light_that_runs_aside_is_flagged()
    {
        Assert.Equal(5.37, OpticsChecks.SidewaysMm(3), 0.01);
        Assert.Single(OpticsChecks.Aperture(4, 12, 3));
        Assert.Empty(OpticsChecks.Aperture(4, 15, 3));
    }

    private static Reading<FittedOptics> Fit(OpticsTable table) => InkOpticsFit.Fit(table, LookSheet.Clear(0.92), TestContext.Current.CancellationToken);

    private static string[] Codes(OpticsTable table) => [.. Fit(table).Value.Findings.Select(f => f.Code)];

    private static OpticsTable Change(OpticsTable table, Func<OpticsReading, bool> where, Func<double, int, double> to) =>
        table with { Readings = [.. table.Readings.Select(r => where(r) ? r with { Values = [.. r.Values.Select(to)] } : r)] };
}
