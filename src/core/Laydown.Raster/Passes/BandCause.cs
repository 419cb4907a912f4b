namespace Laydown.Raster.Passes;

/// <summary>What makes bands.</summary>
public enum BandCause
{
    /// <summary>Nothing that was looked at.</summary>
    None,

    /// <summary>The sheet is moved too far or too short by the same share each time.</summary>
    FeedScale,

    /// <summary>The sheet stands a little off, by chance, at each scan.</summary>
    FeedJitter,

    /// <summary>Dots fired forth and back do not meet.</summary>
    TwoWay,

    /// <summary>Nozzles that fire nothing.</summary>
    MissingNozzles,

    /// <summary>Nozzles that fire aslant.</summary>
    SlantedNozzles,
}
