namespace Laydown.Colour.Spaces;

/// <summary>CIELAB as lightness, chroma and hue [CIE15].</summary>
/// <param name="L">Lightness, as in <see cref="Lab"/>.</param>
/// <param name="C">Chroma, 0 or more.</param>
/// <param name="HueDegrees">Hue angle, 0 up to but not 360: 0 red, 90 yellow, 180 green, 270 blue; 0 for a grey.</param>
public readonly record struct Lch(double L, double C, double HueDegrees)
{
    /// <summary>The same colour as lightness, chroma and hue.</summary>
    public static Lch From(Lab lab)
    {
        double degrees = Math.Atan2(lab.B, lab.A) * 180 / Math.PI;
        double turned = degrees < 0 ? degrees + 360 : degrees;
        return new(lab.L, lab.Chroma, lab.Chroma == 0 || turned >= 360 ? 0 : turned);
    }

    /// <summary>The same colour as <see cref="Lab"/>.</summary>
    public Lab ToLab()
    {
        (double sin, double cos) = Math.SinCos(HueDegrees * Math.PI / 180);
        return new(L, C * cos, C * sin);
    }
}
