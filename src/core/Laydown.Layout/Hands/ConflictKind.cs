namespace Laydown.Layout.Hands;

/// <summary>What is wrong with a layout.</summary>
public enum ConflictKind
{
    /// <summary>Two pieces lie on each other.</summary>
    Overlap,

    /// <summary>Two pieces lie nearer than the gap.</summary>
    Gap,

    /// <summary>A piece reaches into the unprintable margin.</summary>
    Margin,

    /// <summary>A piece reaches over the edge of the sheet, or beyond the length left on the roll.</summary>
    OverEdge,

    /// <summary>A piece lies in a place that is kept free.</summary>
    KeepOut,

    /// <summary>A piece lies turned that may not turn.</summary>
    Turned,

    /// <summary>Pieces that no cut from edge to edge takes apart.</summary>
    Saw,

    /// <summary>Copies without a place.</summary>
    Missing,

    /// <summary>More copies than are wanted.</summary>
    Surplus,
}
