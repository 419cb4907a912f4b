using Laydown.Colour.Vision;
using Laydown.Measures;

namespace Laydown.Raster.Passes;

/// <summary>How visible bands across the scan will be, and why.</summary>
/// <remarks>
/// Errors of placement and nozzles are simulated row by row (<see cref="FeedProfile"/>), weighted by the eye's contrast sensitivity over
/// its best at the viewing
/// distance [Barten1999] and laid on the picture with what a change of coverage does to its lightness there. Taken as true: the picture
/// changes little within a
/// band; light passes the inks one after the other (Y = Π (1 − c (1 − T))); the picture's own detail hides nothing. The last makes it a
/// bound for busy pictures.
/// </remarks>
/// <param name="VisibleDeltaL">Peak of what the eye sees of the bands, L*, not under 0.</param>
/// <param name="TimesThreshold">The same as a multiple of the weakest grating the eye can see: under 1 nobody sees it.</param>
/// <param name="IsDark">Whether the worst line is dark; light otherwise.</param>
/// <param name="AlongShare">Where the worst place lies along the feed, share of the sheet, 0 to 1.</param>
/// <param name="AcrossShare">Where it lies across, share of the sheet, 0 to 1.</param>
/// <param name="StepMm">Distance from swath edge to swath edge, mm.</param>
/// <param name="Main">The main cause.</param>
/// <param name="Shares">Every cause by itself, the most visible first.</param>
public sealed record BandForecast(
    double VisibleDeltaL, double TimesThreshold, bool IsDark, double AlongShare, double AcrossShare, double StepMm, BandCause Main,
    IReadOnlyList<BandShare> Shares)
{
    /// <summary>Bands of that many L* can be objectionable where they repeat at a bad frequency [TentPole2010].</summary>
    public const double ObjectionableDeltaL = 0.2;

    /// <summary>Forecasts bands. Pure: the same wish gives the same figures.</summary>
    /// <exception cref="ArgumentException">No ink, or a picture of another number of planes.</exception>
    public static BandForecast Of(BandWish wish)
    {
        Bounds.NotEmpty(wish.Inks);
        BandScene scene = new(wish);
        BandPeak all = scene.Peak(wish.Errors, missing: true, slanted: true);
        List<BandShare> shares = [.. Alone(wish)
            .Select(c => new BandShare(c.Cause, scene.Peak(c.Errors, c.Missing, c.Slanted).DeltaL)).OrderByDescending(s => s.VisibleDeltaL)];
        return new(all.DeltaL, all.TimesThreshold, all.IsDark, all.AlongShare, all.AcrossShare, wish.Plan.Head.FeedRows * wish.Plan.Head.RowMm,
            shares.Count > 0 && shares[0].VisibleDeltaL > 0 ? shares[0].Cause : BandCause.None, shares);
    }

    /// <summary>Best contrast sensitivity of a viewer, without unit.</summary>
    internal static double BestOf(BandViewer viewer) => BartenSensitivity.Best(viewer.Eye).Sensitivity;

    // Causes that are there at all, each without the others.
    private static IEnumerable<(BandCause Cause, PlacementErrors Errors, bool Missing, bool Slanted)> Alone(BandWish wish)
    {
        PlacementErrors none = PlacementErrors.None with { Seed = wish.Errors.Seed };
        if (wish.Errors.FeedScaleUmPerM != 0)
            yield return (BandCause.FeedScale, none with { FeedScaleUmPerM = wish.Errors.FeedScaleUmPerM }, false, false);
        if (wish.Errors.FeedJitterUm > 0)
            yield return (BandCause.FeedJitter, none with { FeedJitterUm = wish.Errors.FeedJitterUm }, false, false);
        if (wish.Errors.TwoWayUm > 0 && wish.Plan.Head is { TwoWay: true, Passes: > 1 })
            yield return (BandCause.TwoWay, none with { TwoWayUm = wish.Errors.TwoWayUm }, false, false);
        if (wish.Inks.Any(i => i.Flaws.Missing.Count > 0))
            yield return (BandCause.MissingNozzles, none, true, false);
        if (wish.Inks.Any(i => i.Flaws.SlantUm.Count > 0))
            yield return (BandCause.SlantedNozzles, none, false, true);
    }
}
