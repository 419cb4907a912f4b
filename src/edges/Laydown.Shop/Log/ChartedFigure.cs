namespace Laydown.Shop.Log;

/// <summary>What is charted.</summary>
public enum ChartedFigure
{
    /// <summary>Difference in L*.</summary>
    Lightness,

    /// <summary>Difference in a*.</summary>
    RedGreen,

    /// <summary>Difference in b*.</summary>
    YellowBlue,

    /// <summary>Register across the feed.</summary>
    Across,

    /// <summary>Register along the feed.</summary>
    Along,

    /// <summary>Thickness of sheets, five points each.</summary>
    Thickness,

    /// <summary>Share of spoiled sheets.</summary>
    Spoiled,
}
