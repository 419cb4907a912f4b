using Xunit;
using Laydown.Press.HoldDown;
using Laydown.Press.Stocks;

namespace Laydown.Core.Tests.Press;

public sealed class StocksPublishedTests
{
    /// <summary>Whole table of permitted deviations for cast sheet [ISO7823-1].</summary>
    [Theory]
    [InlineData(3, 0.70)]
    [InlineData(5, 0.90)]
    [InlineData(6, 1.00)]
    [InlineData(8, 1.20)]
    [InlineData(10, 1.40)]
    [InlineData(12, 1.60)]
    [InlineData(15, 1.90)]
    [InlineData(20, 2.40)]
    public void Cast_acrylic_may_differ_by_as_much_as_printed(double nominalMm, double toleranceMm) =>
        Assert.Equal(toleranceMm, ThicknessTolerance.CastAcrylicMm(nominalMm), 9);

    /// <summary>Extruded: 10 % below 3 mm, 5 % from there on [ISO7823-2].</summary>
    [Theory]
    [InlineData(2, 0.2)]
    [InlineData(2.9, 0.29)]
    [InlineData(3, 0.15)]
    [InlineData(10, 0.5)]
    public void Extruded_acrylic_may_differ_by_as_much_as_printed(double nominalMm, double toleranceMm) =>
        Assert.Equal(toleranceMm, ThicknessTolerance.ExtrudedAcrylicMm(nominalMm), 9);

    /// <summary>Effective modulus printed in the data sheet of an aluminium composite with 0.5 mm skins [CompositeSheet]; the rule leaves the core out, hence 2 %.</summary>
    [Theory]
    [InlineData(3, 49.0)]
    [InlineData(4, 39.8)]
    [InlineData(6, 29.1)]
    public void The_sandwich_rule_gives_the_printed_modulus(double thicknessMm, double printedGpa) =>
        Assert.Equal(printedGpa, Stiffness.SandwichGpa(70, 0.5, thicknessMm), tolerance: printedGpa * 0.02);

    [Fact]
    public void Fifty_metres_of_0_45_mm_on_an_89_mm_core_are_191_2_mm_thick() =>
        Assert.Equal(191.2, RollSize.OuterDiameterMm(89, 50, 0.45), tolerance: 0.1);

    [Fact]
    public void A_roll_of_510_g_3_2_m_wide_and_50_m_long_weighs_81_6_kg() => Assert.Equal(81.6, RollSize.MassKg(510, 3200, 50), 9);

    [Theory]
    [InlineData(70, 3.42)]
    [InlineData(68, 3.32)]
    [InlineData(24, 1.17)]
    [InlineData(9, 0.44)]
    [InlineData(120, 5.86)]
    public void A_board_of_2_44_m_grows_over_20_K_as_tabulated(double ppmPerK, double mm) =>
        Assert.Equal(mm, Growth.OfLengthMm(2440, ppmPerK, 20), tolerance: 0.005);

    [Fact]
    public void One_cm2_open_at_2_kPa_draws_12_5_m3_an_hour() => Assert.Equal(12.5, Suction.LeakM3PerHour(1, 2), tolerance: 0.1);

    [Fact]
    public void Two_kPa_on_a_whole_board_press_with_5_95_kN() => Assert.Equal(5950, Suction.ForceN(2, 1.22 * 2.44, 100), tolerance: 5);
}
