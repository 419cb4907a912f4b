namespace Laydown.Colour.Spaces;

/// <summary>White points fixed by standards.</summary>
public static class WhitePoints
{
    /// <summary>White of the ICC profile connection space: 0.9642, 1, 0.8249 [ICC1], here times 100.</summary>
    public static Xyz Pcs { get; } = new(96.42, 100, 82.49);

    /// <summary>D65 as sRGB fixes it: x = 0.3127, y = 0.3290 [IEC61966-2-1].</summary>
    public static Xyz Srgb { get; } = new(100 * 0.3127 / 0.3290, 100, 100 * (1 - 0.3127 - 0.3290) / 0.3290);
}
