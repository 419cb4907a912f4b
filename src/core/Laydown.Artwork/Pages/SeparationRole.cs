namespace Laydown.Artwork.Pages;

/// <summary>What a named separation means, after ISO 19593-1 [ISO19593-1].</summary>
public enum SeparationRole
{
    /// <summary>Not known; someone must say.</summary>
    Unknown,

    /// <summary>A colour to print.</summary>
    Colour,

    /// <summary>White.</summary>
    White,

    /// <summary>Clear (Varnish).</summary>
    Clear,

    /// <summary>Cutting.</summary>
    Cut,

    /// <summary>Drilling.</summary>
    Drill,

    /// <summary>Notes and sizes; never printed.</summary>
    Legend,
}
