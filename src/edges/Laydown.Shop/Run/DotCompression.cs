namespace Laydown.Shop.Run;

/// <summary>How dot files are packed.</summary>
public enum DotCompression
{
    /// <summary>Not at all: any place can be read by its position.</summary>
    None,

    /// <summary>PackBits: packs bare sheet.</summary>
    PackBits,

    /// <summary>Deflate: packs dots to about three quarters.</summary>
    Deflate,
}
