namespace Laydown.Layout.Marks;

/// <summary>Kinds of printed marks.</summary>
public enum MarkKind
{
    /// <summary>A disc for a camera.</summary>
    Disc,

    /// <summary>A ring with a cross, printed on both faces: tells how far they are apart.</summary>
    FaceCross,

    /// <summary>A line at a corner of a finished piece.</summary>
    Cut,

    /// <summary>A line at a fold of a hem or pocket.</summary>
    Fold,

    /// <summary>A line where a pocket is stitched or welded.</summary>
    Stitch,

    /// <summary>A line at the place of an eyelet.</summary>
    Eyelet,

    /// <summary>Words that name a piece.</summary>
    Label,

    /// <summary>A QR code with the id of a piece.</summary>
    Code,
}
