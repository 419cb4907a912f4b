namespace Laydown.Measures;

/// <summary>An upright rectangle in millimetres; its origin is the lower left corner.</summary>
/// <param name="XMm">Left edge, mm.</param>
/// <param name="YMm">Lower edge, mm.</param>
/// <param name="WidthMm">Width, mm, not negative.</param>
/// <param name="HeightMm">Height, mm, not negative.</param>
public readonly record struct RectMm(double XMm, double YMm, double WidthMm, double HeightMm)
{
    /// <summary>Right edge, mm.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double RightMm => XMm + WidthMm;

    /// <summary>Upper edge, mm.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double TopMm => YMm + HeightMm;

    /// <summary>Width and height.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public SizeMm Size => new(WidthMm, HeightMm);

    /// <summary>The rectangle grown by <paramref name="byMm"/> on each side; shrunk where negative, never below nothing.</summary>
    public RectMm Grown(double byMm) =>
        new(XMm - byMm, YMm - byMm, Math.Max(0, WidthMm + (2 * byMm)), Math.Max(0, HeightMm + (2 * byMm)));

    /// <summary>Whether the insides of two rectangles share more than <paramref name="slackMm"/> in both directions.</summary>
    public bool Overlaps(RectMm other, double slackMm = 1e-6) =>
        XMm < other.RightMm - slackMm && other.XMm < RightMm - slackMm && YMm < other.TopMm - slackMm && other.YMm < TopMm - slackMm;

    /// <summary>Whether <paramref name="inner"/> lies within this rectangle, edges allowed.</summary>
    public bool Holds(RectMm inner, double slackMm = 1e-6) =>
        inner.XMm >= XMm - slackMm && inner.YMm >= YMm - slackMm && inner.RightMm <= RightMm + slackMm && inner.TopMm <= TopMm + slackMm;
}
