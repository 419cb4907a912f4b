using Laydown.Artwork.Checks;
using Laydown.Artwork.Pages;
using Laydown.Measures;
using static Laydown.Core.Tests.Artwork.Sample;

namespace Laydown.Core.Tests.Artwork;

public sealed class PictureChecksLawTests
{
    [Theory]
    [InlineData(88, null)]
    [InlineData(87, Severity.Warn)]
    [InlineData(44, Severity.Warn)]
    [InlineData(43, Severity.Stop)]
    public void A_picture_coarser_than_one_arc_minute_is_found_and_stops_under_half(double ppi, Severity? severity)
    {
        ArtworkPage page = Page with { Images = [Image with { EffectivePpi = ppi }] };
        Finding? finding = ArtworkChecks.Run(Of(page), Wish).SingleOrDefault();
        Assert.Equal(severity, finding?.Severity);
        if (finding is not null)
            Assert.Equal(("picture-ppi", Image.Place), (finding.Code, finding.Place));
    }

    [Fact]
    public void Resolution_counts_at_the_finished_size_of_a_file_drawn_at_a_tenth()
    {
        ArtworkPage tenth = Page with { TrimMm = new(0.3, 0.3, 60, 40), BleedMm = new(0, 0, 60.6, 40.6), Images = [Image with { EffectivePpi = 300 }] };
        Finding finding = Only(tenth, "picture-ppi", Wish with { ArtworkScale = 10 });
        Assert.StartsWith("30 ppi", finding.Measured, StringComparison.Ordinal);
        Assert.Equal(Severity.Stop, finding.Severity);
    }

    [Fact]
    public void Farther_away_the_same_picture_will_do() => Assert.Empty(Codes(Page with { Images = [Image with { EffectivePpi = 30 }] }, Wish with { ViewingDistanceM = 3 }));

    [Fact]
    public void A_single_pixel_stops() => Assert.Equal(Severity.Stop, Only(Page with { Images = [Image with { PixelWidth = 1, PixelHeight = 1, EffectivePpi = 0.04 }] }, "picture-one-pixel").Severity);

    [Theory]
    [InlineData(720, false)]
    [InlineData(721, true)]
    public void A_picture_over_twice_as_fine_as_the_press_files_is_noted(double ppi, bool found) =>
        Assert.Equal(found, Codes(Page with { Images = [Image with { EffectivePpi = ppi }] }).Contains("picture-finer-than-press"));

    [Theory]
    [InlineData(1, false)]
    [InlineData(8, false)]
    [InlineData(4, true)]
    [InlineData(12, true)]
    [InlineData(16, true)]
    public void An_unusual_depth_is_noted(int bits, bool found) =>
        Assert.Equal(found, Codes(Page with { Images = [Image with { BitsPerComponent = bits }] }).Contains("picture-depth"));

    [Theory]
    [InlineData(true, true, null)]
    [InlineData(true, false, "alpha-unused")]
    [InlineData(false, true, "alpha-missing")]
    [InlineData(false, false, null)]
    public void Alpha_and_the_wish_for_it_must_meet(bool there, bool wanted, string? code) =>
        Assert.Equal(code is null ? [] : [code], Codes(Page with { HasAlpha = there }, Wish with { WhiteFromAlpha = wanted, PrintsWhite = wanted }));

    [Theory]
    [InlineData("DeviceRGB", null, true)]
    [InlineData("DeviceRGB", "sRGB", false)]
    [InlineData("ICCBased(3)", null, false)]
    public void Red_green_and_blue_without_a_profile_are_found(string space, string? profile, bool found) =>
        Assert.Equal(found, Codes(Page with { ColourSpaces = [space], Profile = profile }).Contains("rgb-without-profile"));

    [Theory]
    [InlineData(null, null, true)]
    [InlineData("Demo condition", null, false)]
    [InlineData(null, "Demo profile", false)]
    public void Cmyk_without_a_printing_condition_is_noted(string? intent, string? profile, bool found) => Assert.Equal(
        found, Codes(Of(Page with { ColourSpaces = ["DeviceCMYK"], Profile = profile }) with { OutputIntent = intent }).Contains("cmyk-without-intent"));

    [Theory]
    [InlineData(240, false)]
    [InlineData(241, true)]
    public void Ink_over_the_limit_is_found_at_its_place(double percent, bool found)
    {
        RectMm place = new(100, 100, 10, 10);
        ArtworkPage page = Page with { TotalInkPercent = percent, TotalInkPlace = place };
        Assert.Equal(found, Codes(page).Contains("total-ink"));
        if (found)
            Assert.Equal(place, Only(page, "total-ink").Place);
    }

    [Fact]
    public void Blending_and_overprint_are_noted() => Assert.Equal(["transparency", "overprint"], Codes(Page with { Transparency = true, Overprint = true }));

    [Theory]
    [InlineData(0.25, false)]
    [InlineData(0.24, true)]
    [InlineData(0, true)]
    public void A_thin_line_is_found(double width, bool found) =>
        Assert.Equal(found, Codes(Page with { ThinnestLines = [new(width, new(10, 10, 50, 1))] }).Contains("line-thin"));

    [Fact]
    public void A_line_counts_in_dots_of_a_coarse_mode()
    {
        ArtworkPage page = Page with { ThinnestLines = [new(0.3, new(10, 10, 50, 1))] };
        Assert.DoesNotContain("line-thin", Codes(page));
        Assert.Contains("2.4 dots at 200 dpi", Only(page, "line-thin", Wish with { FeedDpi = 200 }).Measured, StringComparison.Ordinal);
    }

    // Capitals of 0.7 em: 5.9 pt give 1.457 mm, the least at 1 m is 1.454 mm.
    [Theory]
    [InlineData(5.9, false)]
    [InlineData(5.8, true)]
    public void Letters_under_five_arc_minutes_are_found(double points, bool found) =>
        Assert.Equal(found, Codes(Page with { SmallestTexts = [new(points, "Saltmarsh", new(10, 10, 30, 3))] }).Contains("text-small"));

    [Theory]
    [InlineData(6, true)]
    [InlineData(6.1, false)]
    public void Text_of_six_points_does_not_go_over_white(double points, bool found) => Assert.Equal(
        found, Codes(Page with { SmallestTexts = [new(points, "Saltmarsh", new(10, 10, 30, 3))] }, Wish with { PrintsWhite = true }).Contains("text-small-on-white"));

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void A_font_outside_the_file_stops(bool embedded, bool found) =>
        Assert.Equal(found, Codes(Page with { Fonts = [new("Lato-Bold", "TrueType", embedded)] }).Contains("font-not-embedded"));
}
