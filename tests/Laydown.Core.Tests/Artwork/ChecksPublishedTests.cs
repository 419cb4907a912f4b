using Laydown.Artwork.Checks;
using Laydown.Measures;

namespace Laydown.Core.Tests.Artwork;

public sealed class ChecksPublishedTests
{
    /// <summary>Pixels of one arc minute: 3438 ppi over the distance in inches [Howett1983]; printed to one decimal.</summary>
    [Theory]
    [InlineData(0.3, 291, 0.087)]
    [InlineData(0.5, 175, 0.145)]
    [InlineData(1, 87.3, 0.291)]
    [InlineData(2, 43.7, 0.582)]
    [InlineData(3, 29.1, 0.873)]
    [InlineData(5, 17.5, 1.45)]
    [InlineData(10, 8.7, 2.91)]
    [InlineData(25, 3.5, 7.27)]
    [InlineData(50, 1.7, 14.5)]
    [InlineData(75, 1.2, 21.8)]
    public void One_arc_minute_at_a_distance(double distanceM, double ppi, double pixelMm)
    {
        // Half of the last printed place.
        Assert.Equal(ppi, Acuity.Ppi(distanceM), ppi > 100 ? 0.5 : 0.05);
        Assert.Equal(pixelMm, Acuity.PixelMm(distanceM), pixelMm > 10 ? 0.05 : pixelMm > 1 ? 0.005 : 0.0005);
    }

    [Fact]
    public void At_24_inches_143_ppi() => Assert.Equal(143, Acuity.Ppi(24 * 0.0254), 0.5);

    /// <summary>A capital of five arc minutes is 1.45 mm for each metre: 7.25 mm at 5 m as printed.</summary>
    [Fact]
    public void A_capital_at_5_m_is_7_25_mm_high() => Assert.Equal(7.25, Acuity.CapitalMm(5), 0.05);

    /// <summary>Numbers with their check digits as printed by GS1, GS1 Sweden and GS1 India [GS1GenSpecs].</summary>
    [Theory]
    [InlineData("629104150021", 3)]
    [InlineData("730001100001", 7)]
    [InlineData("890400021003", 7)]
    public void A_check_digit_is_the_printed_one(string number, int digit) => Assert.Equal(digit, CodeRules.CheckDigit(number));

    /// <summary>EAN-13 with quiet zones at the recommended module [GS1GenSpecs]: 113 modules of 0.330 mm.</summary>
    [Fact]
    public void An_EAN_13_with_quiet_zones_is_37_29_mm_wide()
    {
        CodeRule rule = CodeRules.For("EAN-13")!;
        Assert.Equal(37.29, rule.Modules * rule.WantedModuleMm, 0.005);
    }

    /// <summary>Least, recommended and largest module and the narrower quiet zone [GS1GenSpecs].</summary>
    [Theory]
    [InlineData("EAN-13", 0.264, 0.330, 0.660, 7)]
    [InlineData("EAN-8", 0.264, 0.330, 0.660, 7)]
    [InlineData("UPC-A", 0.264, 0.330, 0.660, 9)]
    [InlineData("ITF-14", 0.495, 0.495, 1.016, 10)]
    [InlineData("GS1-128", 0.495, 0.495, 1.016, 10)]
    public void Modules_and_quiet_zones_are_the_printed_ones(string kind, double least, double wanted, double most, int quiet)
    {
        CodeRule rule = CodeRules.For(kind)!;
        Assert.Equal((least, wanted, most, quiet), (rule.LeastModuleMm, rule.WantedModuleMm, rule.MostModuleMm, rule.QuietModules));
    }

    /// <summary>Dots for one module of EAN-13 nearest to 0.330 mm within 0.264 to 0.660 mm, reckoned from these published limits.</summary>
    [Theory]
    [InlineData(300, 4)]
    [InlineData(360, 5)]
    [InlineData(600, 8)]
    [InlineData(635, 8)]
    [InlineData(720, 9)]
    [InlineData(900, 12)]
    [InlineData(1200, 16)]
    [InlineData(1440, 19)]
    public void Dots_for_one_module(int dpi, int dots) => Assert.Equal(dots, CodeRules.DotsFor(CodeRules.For("EAN-13")!, dpi));

    /// <summary>14 400 units of 1/72 inch are 5.08 m; with UserUnit 10 they are 50.8 m [PDFReference16].</summary>
    [Theory]
    [InlineData(1, 5.08, "page-at-limit")]
    [InlineData(10, 50.8, "page-over-limit")]
    public void A_page_of_14400_units_is_at_the_limit(double userUnit, double metres, string code)
    {
        double side = 14_400 * 25.4 / 72 * userUnit;
        Finding finding = Sample.Only(Sample.Page with { UserUnit = userUnit, MediaMm = new(side, 406) }, code);
        Assert.StartsWith(Invariant($"{metres} m"), finding.Measured, StringComparison.Ordinal);
    }

    /// <summary>Groups and types of [ISO19593-1] as the Arlington PDF model lists them.</summary>
    [Theory]
    [InlineData("Structural", "Cutting PartialCutting ReversePartialCutting Creasing ReverseCreasing CuttingCreasing ReverseCuttingCreasing PartialCuttingCreasing ReversePartialCuttingCreasing Drilling Gluing FoilStamping ColdFoilStamping Embossing Debossing Perforating Bleed VarnishFree InkFree InkVarnishFree Folding Punching Stapling")]
    [InlineData("Positions", "Hologram Barcode ContentArea CodingMarking Imprinting")]
    [InlineData("PlateMaking", "StationInfo PlateStamping OverstepArea Cutting Bleed NoMark")]
    public void Types_of_a_group_are_known(string group, string types)
    {
        Assert.All(types.Split(' '), t => Assert.Equal(StepName.Standard, ProcessSteps.Judge(Invariant($"{group}/{t}"))));
        Assert.Equal(StepName.Unknown, ProcessSteps.Judge(group));
        Assert.Equal(StepName.Unknown, ProcessSteps.Judge(Invariant($"{group}/Diecut")));
        Assert.Equal(StepName.Own, ProcessSteps.Judge(Invariant($"{group}/TWS_Eyelet")));
    }

    [Theory]
    [InlineData("White")]
    [InlineData("Varnish")]
    [InlineData("Primer")]
    [InlineData("Braille")]
    [InlineData("Legend")]
    [InlineData("Dimensions")]
    public void A_group_without_types_takes_none(string group)
    {
        Assert.Equal(StepName.Standard, ProcessSteps.Judge(group));
        Assert.Equal(StepName.Unknown, ProcessSteps.Judge(Invariant($"{group}/Cutting")));
    }
}
