using Laydown.Colour.Vision;
using Laydown.Raster.Passes;
using Xunit;

namespace Laydown.Core.Tests.Raster.Passes;

public sealed class BandForecastLawTests
{
    private static readonly BandInk Black = new("Black", 0, 0.02, 0.02, 0.02, NozzleFlaws.None);
    private static readonly BandInk Yellow = new("Yellow", 0, 1, 0.95, 0.1, NozzleFlaws.None);

    [Fact]
    public void Without_errors_nothing_is_seen_and_no_cause_is_named()
    {
        BandForecast none = BandForecast.Of(Wish(PlacementErrors.None));
        Assert.Equal((0.0, 0.0, BandCause.None), (none.VisibleDeltaL, none.TimesThreshold, none.Main));
        Assert.Empty(none.Shares);
    }

    /// <summary>
    /// A dead nozzle of a head of one pass leaves a line one row wide. Seen: dL*/dc · g (1 − 0.414 g) · (width of a row in degrees) · 2 ∫
    /// S(u)/S_best du, the integral taken here by
    /// small steps; the tone is black of 0.5. Lines 359 rows apart reach into each other by less than a hundredth.
    /// </summary>
    [Fact]
    public void A_dead_nozzle_is_as_visible_as_the_integral_of_the_sensitivity_says()
    {
        BandViewer viewer = new(1);
        BandInk dead = Black with { Flaws = new(new HashSet<int> { 150 }, new Dictionary<int, double>()) };
        BandForecast seen = BandForecast.Of(new(new(new(359, 4, 359, 1, 1, true, 720, 720), 8000), [dead], Flat(0.5f), PlacementErrors.None, viewer));

        (double _, double best) = BartenSensitivity.Best(viewer.Eye);
        double integral = 2 * Enumerable.Range(0, 10_000).Sum(i => BartenSensitivity.At((i + 0.5) * 0.01, viewer.Eye) / best * 0.01);
        double y = 1 - (0.5 * 0.98), lightness = (116 * Math.Cbrt(y)) - 16;
        double expected = (lightness + 16) / 3 * 0.98 / y * 0.5 * (1 - (0.5 * (Math.Sqrt(2) - 1))) * (25.4 / 720 / viewer.MmPerDegree) * integral;
        Assert.Equal(expected, seen.VisibleDeltaL, 0.02 * expected);
        Assert.Equal(seen.VisibleDeltaL * 3 / (lightness + 16) * best, seen.TimesThreshold, 1e-9);
        Assert.False(seen.IsDark);
        Assert.Equal(BandCause.MissingNozzles, seen.Main);
    }

    [Fact]
    public void Bands_grow_with_the_error_and_are_lost_with_distance()
    {
        double Seen(double um, double distanceM) => BandForecast.Of(Wish(new(um, 0, 0), distanceM: distanceM)).VisibleDeltaL;
        Assert.True(Seen(100, 1) > 0);
        Assert.Equal(2, Seen(200, 1) / Seen(100, 1), 0.02);

        // A line is so much narrower in degrees the farther the eye stands, and beyond 60 lines a degree nothing is seen.
        double[] seen = [Seen(100, 1), Seen(100, 3), Seen(100, 10), Seen(100, 30)];
        Assert.Equal(3, seen[0] / seen[1], 0.5);
        Assert.True(seen[1] > 3 * seen[2] && seen[2] > 3 * seen[3], string.Join(' ', seen));
    }

    /// <summary>Every other row 9 µm off, across all swaths alike: two rows are over 100 lines a degree from half a metre on. The ends of
    /// the sheet and the averaging of rows add
    /// nothing but what the cut two degrees beyond the ends lets through: 0.0004 L* at most here, a five-hundredth of what can be
    /// objectionable.</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(3)]
    [InlineData(20)]
    public void A_pattern_as_fine_as_the_rows_is_not_seen_and_neither_are_the_ends_of_the_sheet(double distanceM)
    {
        NozzleFlaws every = new(new HashSet<int>(), Enumerable.Range(0, 180).ToDictionary(n => n * 2, _ => 9.0));
        BandWish wish = Wish(PlacementErrors.None, new(360, 1, 360, 1, 1, true, 720, 720), distanceM) with { Inks = [Black with { Flaws = every }] };
        Assert.Equal(0, BandForecast.Of(wish).VisibleDeltaL, 0.0005);
    }

    [Fact]
    public void Edges_that_fade_are_seen_less_than_hard_ones()
    {
        PlacementErrors errors = new(0, 10, 0);
        HeadFigures head = new(718, 1, 359, 2, 1, true, 720, 720);
        double hard = BandForecast.Of(Wish(errors, head)).VisibleDeltaL, soft = BandForecast.Of(Wish(errors, head with { FeatherNozzles = 359 })).VisibleDeltaL;
        Assert.True(soft < hard / 2, Invariant($"soft {soft}, hard {hard}"));
    }

    [Fact]
    public void More_passes_hide_a_sheet_that_stands_off_by_chance()
    {
        double[] seen = [.. new[] { 1, 2, 4 }.Select(p => BandForecast.Of(Wish(new(0, 10, 0), new(p * 179, 4, 179, p, 1, true, 720, 720))).VisibleDeltaL)];
        Assert.True(seen[0] > seen[1] && seen[1] > seen[2], string.Join(' ', seen));
    }

    [Fact]
    public void A_dead_nozzle_of_black_is_seen_and_of_yellow_hardly_and_mending_takes_it_away()
    {
        NozzleFlaws dead = new(new HashSet<int> { 150 }, new Dictionary<int, double>());
        BandForecast Of(BandInk ink, float tone, bool mended) => BandForecast.Of(Wish(PlacementErrors.None) with
        { Inks = [ink with { Flaws = dead }], Picture = Flat(tone), Mended = mended });

        Assert.True(Of(Black, 0.5f, false).VisibleDeltaL > 10 * Of(Yellow, 0.5f, false).VisibleDeltaL);
        Assert.Equal(0, Of(Black, 0.5f, true).VisibleDeltaL, 1e-9);
        Assert.Equal(Of(Black, 1, false).VisibleDeltaL, Of(Black, 1, true).VisibleDeltaL);
    }

    [Fact]
    public void The_cause_that_is_seen_most_alone_is_named_and_the_place_lies_where_the_ink_is()
    {
        BandPicture half = new(2, 2, 4);
        half.Row(0, 1)[3] = 0.7f;
        BandForecast forecast = BandForecast.Of(Wish(new(30, 4, 10)) with
        { Inks = [Black with { Flaws = new(new HashSet<int>(), new Dictionary<int, double> { [99] = 60 }) }, Yellow], Picture = half });

        Assert.Equal(BandCause.SlantedNozzles, forecast.Main);
        Assert.Equal(4, forecast.Shares.Count);
        Assert.Equal(forecast.Shares.OrderByDescending(s => s.VisibleDeltaL), forecast.Shares);
        Assert.InRange(forecast.AlongShare, 0.5, 1);
        Assert.Equal(0.875, forecast.AcrossShare);
    }

    [Fact]
    public void The_same_wish_gives_the_same_figures_and_another_seed_others()
    {
        BandWish wish = Wish(new(0, 10, 0));
        Assert.Equal(BandForecast.Of(wish).VisibleDeltaL, BandForecast.Of(wish).VisibleDeltaL);
        Assert.NotEqual(BandForecast.Of(wish).VisibleDeltaL, BandForecast.Of(wish with { Errors = new(0, 10, 0, 2) }).VisibleDeltaL);
    }

    [Fact]
    public void The_preview_shows_light_lines_where_the_profile_has_gaps_and_none_without_errors()
    {
        BandWish wish = Wish(new(400, 0, 0)) with { Picture = Flat(0.5f) };
        BandImage bands = BandPreview.Draw(wish, BandForecast.Of(wish), 1, 200, 50, 4), plain = BandPreview.Draw(wish with { Errors = PlacementErrors.None }, BandForecast.Of(wish), 1, 200, 50, 4);
        Assert.Equal((200, 50, 200 * 50 * 3), (bands.Rows, bands.Columns, bands.Rgb.Length));
        Assert.Single(plain.Rgb.Distinct());
        byte flat = plain.Rgb[0];
        int[] rows = [.. Enumerable.Range(0, 200).Select(r => (int)bands.Rgb[r * 150])];
        Assert.Contains(rows, v => v > flat);
        BandImage more = BandPreview.Draw(wish, BandForecast.Of(wish), 5, 200, 50, 4);
        Assert.True(more.Rgb.Max() > bands.Rgb.Max());
    }

    internal static BandPicture Flat(float tone, int inks = 1)
    {
        BandPicture flat = new(inks, 1, 1);
        for (int ink = 0; ink < inks; ink++)
            flat.Row(ink, 0)[0] = tone;
        return flat;
    }

    private static BandWish Wish(PlacementErrors errors, HeadFigures? head = null, double distanceM = 1) =>
        new(new(head ?? new(718, 4, 359, 2, 1, true, 720, 720), 8000), [Black], BandPicture.Wedges(1), errors, new(distanceM));
}

public sealed class BandForecastRefusalTests
{
    [Fact]
    public void A_picture_of_other_inks_no_ink_and_a_viewer_at_no_distance_are_refused()
    {
        PassPlan plan = new(PassPlanLawTests.Head(4, 7, 2, 1), 100);
        BandInk black = new("Black", 0, 0.02, 0.02, 0.02, NozzleFlaws.None);
        Assert.Throws<ArgumentException>(() => BandForecast.Of(new(plan, [black, black], BandForecastLawTests.Flat(1), PlacementErrors.None, new(1))));
        Assert.Throws<ArgumentException>(() => BandForecast.Of(new(plan, [], BandForecastLawTests.Flat(1), PlacementErrors.None, new(1))));
        Assert.Throws<ArgumentOutOfRangeException>(() => BandForecast.Of(new(plan, [black], BandForecastLawTests.Flat(1), PlacementErrors.None, new(0))));
    }
}
