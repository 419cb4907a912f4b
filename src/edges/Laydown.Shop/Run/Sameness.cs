namespace Laydown.Shop.Run;

/// <summary>How far a file of one make is like the file of the same name of another.</summary>
public enum Sameness
{
    /// <summary>The same bytes.</summary>
    SameBytes,

    /// <summary>Other bytes, but every pixel or dot is the same: packed or described another way.</summary>
    SamePixels,

    /// <summary>Pixels or dots differ.</summary>
    OtherPixels,

    /// <summary>Another size or resolution, other inks, or other bits.</summary>
    OtherShape,

    /// <summary>No press file, and other bytes.</summary>
    OtherBytes,

    /// <summary>The second make has no such file.</summary>
    OnlyFirst,

    /// <summary>The first make has no such file.</summary>
    OnlySecond,
}
