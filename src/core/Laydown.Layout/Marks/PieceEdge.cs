namespace Laydown.Layout.Marks;

/// <summary>An edge of a finished piece, as it is looked at.</summary>
public enum PieceEdge
{
    /// <summary>The upper edge.</summary>
    Top,

    /// <summary>The right edge.</summary>
    Right,

    /// <summary>The lower edge.</summary>
    Bottom,

    /// <summary>The left edge.</summary>
    Left,
}
