namespace Laydown.Layout.FreePacking;

/// <summary>Which bare rectangle suits a piece best.</summary>
internal enum FreeFit
{
    /// <summary>Least rest on the side that fits closer.</summary>
    ShortRest,

    /// <summary>Least rest on the other side.</summary>
    LongRest,

    /// <summary>Least area left of the rectangle.</summary>
    LeastArea,

    /// <summary>Lowest upper side, then leftmost.</summary>
    Low,

    /// <summary>Leftmost right side, then lowest.</summary>
    Left,
}
