namespace Laydown.Colour.Spaces;

/// <summary>The CIELAB colour difference of 1976 [CIE15]: the distance in Lab.</summary>
public static class Cie76
{
    /// <summary>ΔE*ab; 0 for equal colours, the same both ways round.</summary>
    public static double Between(Lab one, Lab other)
    {
        double l = one.L - other.L, a = one.A - other.A, b = one.B - other.B;
        return Math.Sqrt((l * l) + (a * a) + (b * b));
    }
}
