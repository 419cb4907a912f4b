using Laydown.Artwork.Checks;
using Laydown.Artwork.Pages;
using Laydown.Measures;
using static Laydown.Core.Tests.Artwork.Sample;

namespace Laydown.Core.Tests.Artwork;

public sealed class LayerChecksLawTests
{
    private static readonly CheckWish Contour = Wish with { ContourCut = true };

    [Fact]
    public void Hidden_layers_are_named() =>
        Assert.Contains("night birds", Only(Page with { HiddenLayers = ["night birds"] }, "layer-hidden").Measured, StringComparison.Ordinal);

    [Theory]
    [InlineData(SeparationRole.Unknown, "separation-unknown")]
    [InlineData(SeparationRole.Colour, "spot-colour")]
    [InlineData(SeparationRole.White, null)]
    public void A_separation_is_judged_by_its_meaning(SeparationRole role, string? code) =>
        Assert.Equal(code is null ? [] : [code], Codes(Page with { Separations = [Separation("X", role)] }));

    [Theory]
    [InlineData("White", "white-missing", false)]
    [InlineData("Weiss", "white-missing", true)]
    public void White_wanted_from_a_separation_must_be_there(string wanted, string code, bool found) => Assert.Equal(
        found, Codes(Page with { Separations = [Separation("White", SeparationRole.White)] }, Wish with { PrintsWhite = true, WhiteSeparation = wanted }).Contains(code));

    [Theory]
    [InlineData(SeparationRole.White, false, "white-knocks-out")]
    [InlineData(SeparationRole.Cut, false, "cut-knocks-out")]
    [InlineData(SeparationRole.White, true, null)]
    [InlineData(SeparationRole.White, null, null)]
    public void A_separation_that_knocks_out_is_found(SeparationRole role, bool? overprints, string? code) =>
        Assert.Equal(code is null ? [] : [code], Codes(Page with { Separations = [Separation("X", role, null, overprints)] }));

    [Theory]
    [InlineData("Structural/Cutting", null)]
    [InlineData("Structural/Diecut", "process-step-unknown")]
    [InlineData("Structural/TWS_Eyelet", "process-step-own")]
    [InlineData("White", null)]
    public void A_processing_step_is_judged_by_its_name(string step, string? code) =>
        Assert.Equal(code is null ? [] : [code], Codes(Page with { Separations = [Separation("X", SeparationRole.Cut, step)] }));

    [Fact]
    public void A_sound_cut_path_is_no_finding() => Assert.Empty(Codes(Page with { CutPaths = [Cut] }, Contour));

    [Fact]
    public void A_cut_path_nobody_ordered_is_noted() => Assert.Equal(["cut-unused"], Codes(Page with { CutPaths = [Cut] }));

    [Fact]
    public void A_contour_without_a_path_stops_and_a_separation_alone_is_told_apart()
    {
        Assert.Contains("no path", Only(Page, "cut-missing", Contour).What, StringComparison.Ordinal);
        Assert.Contains("no stroked path", Only(Page with { Separations = [Separation("Cut", SeparationRole.Cut)] }, "cut-missing", Contour).What, StringComparison.Ordinal);
    }

    [Fact]
    public void An_open_cut_path_stops_with_its_gap() =>
        Assert.Contains("190 mm", Only(Page with { CutPaths = [Cut with { Closed = false }] }, "cut-open", Contour).Measured, StringComparison.Ordinal);

    [Theory]
    [InlineData(0, false)]
    [InlineData(0.09, false)]
    [InlineData(0.11, true)]
    public void A_path_that_comes_back_to_its_start_is_not_open(double gap, bool found) => Assert.Equal(
        found, Codes(Page with { CutPaths = [new([new(10, 10), new(200, 10), new(200, 200), new(10, 10 + gap)], false, "Cutting")] }, Contour).Contains("cut-open"));

    [Fact]
    public void An_open_kiss_cut_is_no_finding() => Assert.Empty(Codes(Page with { CutPaths = [Cut with { Closed = false, ProcessStep = "PartialCutting" }] }, Contour));

    [Fact]
    public void A_cut_path_that_crosses_itself_stops_at_the_crossing()
    {
        CutPath eight = Cut with { Points = [new(10, 10), new(210, 210), new(210, 10), new(10, 210)] };
        Finding finding = Only(Page with { CutPaths = [eight] }, "cut-crosses-itself", Contour);
        Assert.Equal(new RectMm(109, 109, 2, 2), finding.Place);
    }

    // The printed piece reaches 3 mm beyond the trim: from 0 to 606 mm across.
    [Theory]
    [InlineData(606.1, false)]
    [InlineData(606.5, true)]
    public void A_cut_path_outside_the_printed_piece_stops(double right, bool found) => Assert.Equal(
        found, Codes(Page with { CutPaths = [Cut with { Points = [new(10, 10), new(right, 10), new(10, 200)] }] }, Contour).Contains("cut-outside"));

    [Fact]
    public void A_cut_path_on_one_spot_stops() => Assert.Contains("cut-point", Codes(Page with { CutPaths = [Cut with { Points = [new(5, 5), new(5, 5), new(9, 9)] }] }, Contour));

    [Theory]
    [InlineData(9 * 25.4 / 720, null)]
    [InlineData(8 * 25.4 / 720, null)]
    [InlineData(7 * 25.4 / 720, "code-module-small")]
    [InlineData(19 * 25.4 / 720, "code-module-large")]
    public void A_module_must_lie_within_its_limits(double module, string? code) =>
        Assert.Equal(code is null ? [] : [code], Codes(Page with { Codes = [Code with { ModuleMm = module }] }));

    [Fact]
    public void A_module_of_no_whole_dots_is_found_with_the_nearest_whole_number()
    {
        Finding finding = Only(Page with { Codes = [Code with { ModuleMm = 0.330 }] }, "code-not-whole-dots");
        Assert.Equal("0.33 mm, 9.35 dots at 720 dpi", finding.Measured);
        Assert.Equal("9 dots, 0.3175 mm", finding.Wanted);
    }

    [Fact]
    public void A_module_counts_at_the_finished_size_and_both_ways_for_a_square_code()
    {
        CodeUse square = new("QR", "saltmarsh", new(1, 1, 4, 4), 0.1 * 25.4 / 72, 4);
        ArtworkPage tenth = Page with { TrimMm = new(0.3, 0.3, 60, 40), BleedMm = new(0, 0, 60.6, 40.6), Codes = [square] };
        CheckWish wish = Wish with { ArtworkScale = 10, ScanDpi = 720, FeedDpi = 700 };
        Assert.Contains("700 dpi", Only(tenth, "code-not-whole-dots", wish).Measured, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(7.0, false)]
    [InlineData(6.0, true)]
    [InlineData(null, false)]
    public void A_quiet_zone_too_narrow_is_found(double? modules, bool found) =>
        Assert.Equal(found, Codes(Page with { Codes = [Code with { QuietZoneModules = modules }] }).Contains("code-quiet-zone"));

    [Theory]
    [InlineData("7300011000017", false)]
    [InlineData("7300011000018", true)]
    public void A_wrong_check_digit_stops(string text, bool found) =>
        Assert.Equal(found, Codes(Page with { Codes = [Code with { Text = text }] }).Contains("code-check-digit"));

    [Fact]
    public void A_panel_for_day_and_night_needs_two_pages_of_one_size()
    {
        CheckWish panel = Wish with { SecondPage = true };
        Assert.Equal(["page-missing"], Codes(Page, panel));
        Assert.Empty(Codes(Of(Page, Page with { Number = 2 }), panel));
        Assert.Contains("pages-differ", Codes(Of(Page, Page with { Number = 2, TrimMm = new(3, 3, 598, 400) }), panel));
        Assert.Equal(["page-missing", "bleed-missing"], Codes(Of(Page with { BleedMm = Page.TrimMm }), panel));
    }

    [Theory]
    [InlineData(1, null)]
    [InlineData(2, Severity.Note)]
    [InlineData(100, Severity.Warn)]
    public void Pages_left_unused_are_told(int pages, Severity? severity) => Assert.Equal(
        severity, ArtworkChecks.Run(Of([.. Enumerable.Range(1, pages).Select(n => Page with { Number = n })]), Wish).SingleOrDefault()?.Severity);

    [Theory]
    [InlineData(600, false)]
    [InlineData(599, true)]
    public void A_tiny_file_is_found(long bytes, bool found) => Assert.Equal(found, Codes(Of(Page) with { Bytes = bytes }).Contains("file-tiny"));

    [Fact]
    public void The_worst_comes_first()
    {
        ArtworkPage page = Page with { Transparency = true, BleedMm = Page.TrimMm, Fonts = [new("Lato", "TrueType", false)] };
        Assert.Equal([Severity.Stop, Severity.Warn, Severity.Note], ArtworkChecks.Run(Of(page), Wish).Select(f => f.Severity));
    }

    [Fact]
    public void Every_finding_has_words_values_and_a_source()
    {
        ArtworkPage page = Page with
        {
            BleedMm = Page.TrimMm,
            Transparency = true,
            Overprint = true,
            HasAlpha = true,
            HiddenLayers = ["a"],
            ColourSpaces = ["DeviceRGB", "DeviceCMYK"],
            Profile = null,
            Images = [Image with { EffectivePpi = 9, BitsPerComponent = 16 }],
            Fonts = [new("F", "Type1", false)],
            ThinnestLines = [new(0, new(0, 0, 1, 1))],
            SmallestTexts = [new(2, "x", new(0, 0, 1, 1))],
            CutPaths = [Cut with { Closed = false }],
            Codes = [Code with { ModuleMm = 0.2, QuietZoneModules = 1 }],
            Separations = [Separation("U", SeparationRole.Unknown, "Nowhere/Nothing"), Separation("W", SeparationRole.White, null, false)],
            TotalInkPercent = 400,
        };
        IReadOnlyList<Finding> findings = ArtworkChecks.Run(Of(page), Contour);
        Assert.True(findings.Select(f => f.Code).Distinct().Count() >= 18);
        Assert.All(findings, f => Assert.False(
            string.IsNullOrWhiteSpace(f.What) || string.IsNullOrWhiteSpace(f.Measured) || string.IsNullOrWhiteSpace(f.Wanted) || string.IsNullOrWhiteSpace(f.Source)));
    }
}
