namespace Laydown.Press.Inks;

/// <summary>Where the optics of an ink come from.</summary>
public enum OpticsOrigin
{
    /// <summary>No readings stand behind it: a generic class, synthetic, and said so wherever it is shown.</summary>
    Generic,

    /// <summary>The dark ink's optics thinned by the strength that the ink set names.</summary>
    Thinned,

    /// <summary>Fitted to readings over a black and over a white backing.</summary>
    OverBlackAndWhite,

    /// <summary>Fitted to readings over a black backing and in transmission.</summary>
    OverBlackAndThrough,

    /// <summary>Fitted to readings over a white backing and in transmission.</summary>
    OverWhiteAndThrough,

    /// <summary>Fitted to readings over black, over white and in transmission.</summary>
    OverBothAndThrough,

    /// <summary>Fitted to readings in transmission alone: absorption only.</summary>
    Through,

    /// <summary>Fitted to readings over one backing alone: absorption only.</summary>
    OverOne,
}
