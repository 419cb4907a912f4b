namespace Laydown.Layout.Packing;

/// <summary>Which way the rest of a rectangle is cut after a piece was put in its corner.</summary>
internal enum Split
{
    /// <summary>Along the shorter rest.</summary>
    ShortRest,

    /// <summary>Along the longer rest.</summary>
    LongRest,

    /// <summary>So that the larger of the two rests is as large as can be.</summary>
    LargeRest,

    /// <summary>Across first: the strip above goes over the whole width.</summary>
    Across,

    /// <summary>Upright first: the strip beside goes over the whole height.</summary>
    Upright,
}
