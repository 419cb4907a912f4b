namespace Laydown.Formats.TiffWriting;

/// <summary>How the strips of a dot TIFF are packed. Fax coding is not among them: screened dots grow to twice their size in it.</summary>
public enum DotPacking
{
    /// <summary>As they are: any place of the picture can be read, and written, by its position alone.</summary>
    None,

    /// <summary>PackBits [TIFF6], row by row: packs bare area, hardly dots.</summary>
    PackBits,

    /// <summary>Deflate [RFC1950] in a zlib frame, at its fastest level.</summary>
    Deflate,
}
