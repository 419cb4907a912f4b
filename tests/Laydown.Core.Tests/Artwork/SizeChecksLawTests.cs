using Laydown.Artwork.Checks;
using Laydown.Artwork.Pages;
using Laydown.Measures;
using static Laydown.Core.Tests.Artwork.Sample;

namespace Laydown.Core.Tests.Artwork;

public sealed class SizeChecksLawTests
{
    [Fact]
    public void A_faultless_page_has_no_finding() => Assert.Empty(Codes(Page));

    [Theory]
    [InlineData(600, 401.9, null)]
    [InlineData(600, 402.1, Severity.Warn)]
    [InlineData(600, 407.9, Severity.Warn)]
    [InlineData(600, 408.5, Severity.Stop)]
    public void Another_proportion_is_found_over_half_a_percent_and_stops_over_two(double width, double height, Severity? severity)
    {
        Finding? finding = ArtworkChecks.Run(Of(WithTrim(width, height)), Wish).SingleOrDefault(f => f.Code == "proportion");
        Assert.Equal(severity, finding?.Severity);
    }

    [Fact]
    public void A_page_that_lies_on_its_side_is_told_from_a_wrong_proportion()
    {
        IReadOnlyList<string> codes = Codes(WithTrim(400, 600));
        Assert.Contains("page-lies", codes);
        Assert.DoesNotContain("proportion", codes);
    }

    [Theory]
    [InlineData(60, 40, 1, "scale", "1:10")]
    [InlineData(600, 400, 10, "scale", "1:1")]
    [InlineData(300, 200, 1, "scale", "1:2")]
    [InlineData(450, 300, 1, "trim-size", "another size")]
    public void A_wrong_scale_shows_its_ratio(double width, double height, int scale, string code, string said)
    {
        Finding finding = Only(WithTrim(width, height), code, Wish with { ArtworkScale = scale });
        Assert.Contains(said, finding.What, StringComparison.Ordinal);
        Assert.Contains(Invariant($"{width * scale / 600:0.###} times"), finding.Measured, StringComparison.Ordinal);
        Assert.NotNull(finding.Repair);
    }

    [Theory]
    [InlineData(60, 40, 10)]
    [InlineData(600, 400, 1)]
    [InlineData(604, 402.7, 1)]
    public void The_scale_ordered_is_no_finding(double width, double height, int scale) =>
        Assert.DoesNotContain(Codes(WithTrim(width, height), Wish with { ArtworkScale = scale }), c => c is "scale" or "trim-size");

    [Fact]
    public void A_page_without_trim_box_is_found_and_one_that_holds_its_bleed_is_told_apart()
    {
        Assert.Contains("taken as the finished", Only(Page with { HasTrimBox = false }, "trim-box-missing", Wish with { BleedMm = 2 }).What, StringComparison.Ordinal);
        Assert.Contains("with its bleed", Only(Page with { HasTrimBox = false }, "trim-box-missing").What, StringComparison.Ordinal);
        Assert.DoesNotContain("trim-box-missing", Codes(Of(Page with { HasTrimBox = false }) with { Kind = ArtworkKind.Svg }));
    }

    [Theory]
    [InlineData(5079, false)]
    [InlineData(5080, true)]
    [InlineData(5081, true)]
    public void A_page_at_or_over_5_08_m_is_noted(double side, bool found) =>
        Assert.Equal(found, Codes(Page with { MediaMm = new(side, 406) }).Any(c => c is "page-at-limit" or "page-over-limit"));

    [Fact]
    public void A_unit_of_its_own_shows_both_sizes() =>
        Assert.Contains("60.6 × 40.6 mm", Only(Page with { UserUnit = 10 }, "user-unit").Measured, StringComparison.Ordinal);

    [Theory]
    [InlineData(100, false)]
    [InlineData(96, false)]
    [InlineData(72, true)]
    public void A_declared_resolution_that_leads_to_another_size_is_noted(double declared, bool found)
    {
        ArtworkFile file = Of(Page with { Images = [Image with { DeclaredPpi = declared }] }) with { Kind = ArtworkKind.Jpeg };
        Assert.Equal(found, Codes(file).Contains("declared-ppi"));
    }

    [Theory]
    [InlineData(3, new string[0])]
    [InlineData(2.95, new string[0])]
    [InlineData(2.5, new[] { "bleed-small" })]
    [InlineData(0.05, new[] { "bleed-missing" })]
    [InlineData(0, new[] { "bleed-missing" })]
    public void Bleed_that_falls_short_is_found_with_its_repair(double bleed, string[] codes)
    {
        ArtworkPage page = Page with { BleedMm = Page.TrimMm.Grown(bleed) };
        Assert.Equal(codes, Codes(page));
        Assert.All(ArtworkChecks.Run(Of(page), Wish), f => Assert.Contains("mirrored", f.Repair, StringComparison.Ordinal));
    }

    [Fact]
    public void Bleed_counts_at_the_finished_size()
    {
        ArtworkPage tenth = Page with { TrimMm = new(1, 1, 60, 40), BleedMm = new(0.7, 0.7, 60.6, 40.6) };
        Assert.DoesNotContain(Codes(tenth, Wish with { ArtworkScale = 10 }), c => c.StartsWith("bleed", StringComparison.Ordinal));
    }

    [Fact]
    public void No_bleed_wanted_is_no_finding() => Assert.Empty(Codes(Page with { BleedMm = Page.TrimMm }, Wish with { BleedMm = 0 }));

    [Fact]
    public void A_page_without_size_stops_and_nothing_else_is_said() => Assert.Equal(["trim-empty"], Codes(Page with { TrimMm = new(0, 0, 0, 40) }));

    private static ArtworkPage WithTrim(double width, double height) =>
        Page with { MediaMm = new(width + 6, height + 6), TrimMm = new(3, 3, width, height), BleedMm = new(0, 0, width + 6, height + 6) };
}
