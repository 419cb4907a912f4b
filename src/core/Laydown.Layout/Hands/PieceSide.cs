namespace Laydown.Layout.Hands;

/// <summary>Sides of a piece as it lies on the sheet.</summary>
public enum PieceSide
{
    /// <summary>Toward the sheet's left edge.</summary>
    Left,

    /// <summary>Toward its right edge.</summary>
    Right,

    /// <summary>Toward its lower edge.</summary>
    Below,

    /// <summary>Toward its upper edge.</summary>
    Above,
}
