namespace Laydown.Layout.Packing;

/// <summary>Which bare rectangle a piece likes best.</summary>
internal enum Fit
{
    /// <summary>The one whose shorter rest is least.</summary>
    ShortRest,

    /// <summary>The one whose longer rest is least.</summary>
    LongRest,

    /// <summary>The smallest one.</summary>
    Area,

    /// <summary>The lowest place, then the leftmost.</summary>
    Low,
}
