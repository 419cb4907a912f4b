namespace Laydown.Plan.Orders;

/// <summary>Kinds of work after printing.</summary>
public enum FinishingKind
{
    /// <summary>Cut to a rectangle.</summary>
    CutSquare,

    /// <summary>Cut along the contour.</summary>
    CutContour,

    /// <summary>Drilled holes.</summary>
    Drill,

    /// <summary>Hems on all edges.</summary>
    Hem,

    /// <summary>Eyelets.</summary>
    Eyelet,

    /// <summary>Tape on the back.</summary>
    Tape,

    /// <summary>Packed.</summary>
    Pack,

    /// <summary>Pockets for poles.</summary>
    PolePocket,

    /// <summary>A film laid over the print.</summary>
    Laminate,

    /// <summary>Glued onto a board.</summary>
    Mount,
}
