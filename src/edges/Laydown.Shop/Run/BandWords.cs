using Laydown.Raster.Passes;

namespace Laydown.Shop.Run;

/// <summary>Causes of bands as people say them.</summary>
public static class BandWords
{
    /// <summary>The cause, as the rest of a sentence.</summary>
    public static string Of(BandCause cause) => cause switch
    {
        BandCause.FeedScale => "a feed that is too far or too short by the same share each time",
        BandCause.FeedJitter => "a sheet that stands a little off at each scan",
        BandCause.TwoWay => "dots fired forth and back that do not meet",
        BandCause.MissingNozzles => "missing nozzles",
        BandCause.SlantedNozzles => "nozzles that fire aslant",
        _ => "nothing that was looked at",
    };

    /// <summary>What can be done about it.</summary>
    public static string CureOf(BandCause cause) => cause switch
    {
        BandCause.FeedScale => "Calibrate the feed to this stock.",
        BandCause.FeedJitter => "More passes or a wider feather hide it; look at belt and vacuum.",
        BandCause.TwoWay => "Align forth and back at this head gap, or print one-way.",
        BandCause.MissingNozzles => "Clean the heads and print the nozzle pattern again.",
        BandCause.SlantedNozzles => "Clean the heads and print the nozzle pattern again.",
        _ => "Nothing to do.",
    };

    /// <summary>How much of it is seen.</summary>
    public static string Seen(BandForecast forecast) => forecast.TimesThreshold < 1
        ? "not seen"
        : forecast.VisibleDeltaL <= BandForecast.ObjectionableDeltaL ? "faint" : "seen";
}
