namespace Laydown.Optics.Panels;

/// <summary>How the strength of the white between the pictures may be chosen.</summary>
public enum WhiteUse
{
    /// <summary>One strength everywhere.</summary>
    Fixed,

    /// <summary>One of a few strengths, region by region.</summary>
    Stepped,

    /// <summary>Any strength between two, changing slowly over the piece.</summary>
    Free,
}
