using SkiaSharp;

namespace Laydown.Demo.Art;

/// <summary>Birds of the estuary as few clean shapes, about one unit long, looking to the right.</summary>
internal static class Birds
{
    private static readonly Outline TernFarWing = new Outline().M(0.26, -0.05).C(0.42, -0.20, 0.60, -0.32, 0.72, -0.50).C(0.86, -0.72, 0.90, -0.98, 0.86, -1.30)
        .C(0.72, -1.00, 0.58, -0.76, 0.40, -0.56).C(0.24, -0.40, 0.10, -0.22, 0.00, -0.05).Z();

    private static readonly Outline TernBody = new Outline().M(0.60, -0.02).C(0.55, -0.11, 0.46, -0.14, 0.36, -0.125).C(0.10, -0.09, -0.25, -0.06, -0.62, -0.01)
        .C(-0.30, 0.09, 0.08, 0.18, 0.38, 0.10).C(0.50, 0.065, 0.57, 0.03, 0.60, -0.02).Z();

    private static readonly Outline TernTail = new Outline().M(-0.46, -0.04).C(-0.80, -0.04, -1.05, -0.10, -1.36, -0.22).C(-1.08, -0.03, -0.86, 0.01, -0.68, 0.02)
        .C(-0.86, 0.06, -1.06, 0.10, -1.32, 0.11).C(-1.00, 0.15, -0.75, 0.11, -0.44, 0.06).Z();

    private static readonly Outline TernNearWing = new Outline().M(0.34, -0.05).C(0.45, -0.22, 0.44, -0.40, 0.28, -0.56).C(0.10, -0.76, -0.20, -1.00, -0.62, -1.22)
        .C(-0.40, -0.92, -0.24, -0.72, -0.13, -0.52).C(-0.07, -0.36, -0.07, -0.20, -0.12, -0.03).Z();

    private static readonly Outline TernTip = new Outline().M(-0.13, -0.905).C(-0.28, -1.02, -0.44, -1.13, -0.62, -1.22).C(-0.48, -1.03, -0.36, -0.87, -0.27, -0.745).Z();

    private static readonly Outline TernCap = new Outline().M(0.60, -0.035).C(0.55, -0.115, 0.46, -0.15, 0.36, -0.132).C(0.30, -0.12, 0.24, -0.10, 0.17, -0.075)
        .C(0.32, -0.055, 0.45, -0.035, 0.60, -0.012).Z();

    private static readonly Outline TernBill = new Outline().M(0.575, -0.055).C(0.68, -0.04, 0.76, -0.015, 0.84, 0.025).C(0.74, 0.025, 0.66, 0.02, 0.585, 0.015).Z();

    private static readonly Outline AvocetNeck = new Outline().M(0.06, -0.20).C(0.25, -0.40, 0.23, -0.62, 0.295, -0.78).C(0.34, -0.90, 0.50, -0.94, 0.58, -0.855)
        .C(0.60, -0.80, 0.56, -0.75, 0.50, -0.725).C(0.43, -0.60, 0.49, -0.38, 0.38, 0.02).Z();

    private static readonly Outline AvocetBody = new Outline().M(0.36, -0.12).C(0.47, 0.08, 0.31, 0.27, 0.02, 0.27).C(-0.28, 0.27, -0.52, 0.13, -0.78, -0.02)
        .C(-0.52, -0.12, -0.25, -0.30, 0.05, -0.27).C(0.20, -0.25, 0.28, -0.22, 0.36, -0.12).Z();

    private static readonly Outline AvocetBlack = new Outline().M(0.585, -0.835).C(0.50, -0.955, 0.33, -0.915, 0.29, -0.77).C(0.265, -0.66, 0.265, -0.55, 0.225, -0.44)
            .C(0.30, -0.50, 0.335, -0.61, 0.365, -0.715).C(0.42, -0.77, 0.50, -0.775, 0.585, -0.835).Z()
        .And(new Outline().M(0.14, -0.262).C(-0.10, -0.27, -0.32, -0.17, -0.46, -0.06).C(-0.26, -0.12, -0.04, -0.16, 0.16, -0.17).Z())
        .And(new Outline().M(-0.26, 0.05).C(-0.44, 0.06, -0.62, 0.02, -0.86, -0.02).C(-0.66, 0.11, -0.44, 0.165, -0.20, 0.14).Z())
        .And(new Outline().M(0.19, 0.00).C(0.02, -0.08, -0.18, -0.05, -0.36, 0.03).C(-0.20, 0.02, 0.00, 0.05, 0.15, 0.10).Z());

    private static readonly Outline AvocetBill = new Outline().M(0.54, -0.885).C(0.74, -0.80, 0.92, -0.79, 1.16, -0.985).C(0.94, -0.74, 0.74, -0.745, 0.53, -0.805).Z();

    private static readonly Outline AvocetLegs = Leg(-0.03, 0.24, 0.05, 0.64, -0.01, 1.02).And(Leg(0.10, 0.23, 0.20, 0.60, 0.28, 1.00));

    /// <summary>A tern on the wing.</summary>
    public static void Tern(Picture picture, Affine place, bool lit = false)
    {
        if (lit)
            Glow(picture, place, -0.4);
        SKColor white = lit ? Palette.Star : new(0xFB, 0xFA, 0xF4);
        SKColor grey = lit ? Palette.Lamp : new(0xC9, 0xD2, 0xD2);
        picture.Fill(TernFarWing.At(place), lit ? Palette.Mix(Palette.Lamp, Palette.Dune, 0.35) : new SKColor(0xA9, 0xB8, 0xBB));
        picture.Fill(TernTail.At(place), white);
        picture.Fill(TernBody.At(place), white);
        picture.Fill(TernNearWing.At(place), grey);
        picture.Fill(TernTip.At(place), lit ? Palette.Dune : new SKColor(0x52, 0x5E, 0x63));
        picture.Fill(TernCap.At(place), lit ? Palette.Samphire : Palette.Slate);
        picture.Fill(TernBill.At(place), Palette.Bill);
    }

    /// <summary>An avocet wading; its feet are 1.02 below its place.</summary>
    public static void Avocet(Picture picture, Affine place, bool lit = false, double opacity = 1)
    {
        if (lit)
            Glow(picture, place, -0.1);
        SKColor white = lit ? Palette.Star : new(0xFB, 0xFA, 0xF4);
        SKColor black = lit ? Palette.Samphire : Palette.Slate;
        picture.Fill(AvocetLegs.At(place), lit ? Palette.Dune : new SKColor(0x6E, 0x8A, 0x97), opacity);
        picture.Fill(AvocetBody.At(place), lit ? Palette.Lamp : white, opacity);
        picture.Fill(AvocetNeck.At(place), white, opacity);
        picture.Fill(AvocetBlack.At(place), black, opacity);
        picture.Fill(AvocetBill.At(place), black, opacity);
    }

    /// <summary>The outer shapes of a tern, one over the other, for white and cutting.</summary>
    public static IReadOnlyList<Outline> TernParts(Affine place) =>
        [TernFarWing.At(place), TernTail.At(place), TernBody.At(place), TernNearWing.At(place), TernCap.At(place), TernBill.At(place)];

    /// <summary>The outer shapes of an avocet.</summary>
    public static IReadOnlyList<Outline> AvocetParts(Affine place) =>
        [AvocetLegs.At(place), AvocetBody.At(place), AvocetNeck.At(place), AvocetBlack.At(place), AvocetBill.At(place)];

    /// <summary>Lamp light around a lit bird.</summary>
    private static void Glow(Picture picture, Affine place, double up)
    {
        (double cx, double cy) = place.Of(0, up);
        double size = Math.Sqrt((place.A * place.A) + (place.B * place.B)) * 1.7;
        picture.Soften(cx - size, cy - size, 2 * size, 2 * size, Picture.SoftPpi, canvas =>
        {
            SKPoint centre = new((float)cx, (float)cy);
            using SKShader shader = SKShader.CreateRadialGradient(
                centre, (float)size, [Palette.Lamp.WithAlpha(105), Palette.Lamp.WithAlpha(34), Palette.Lamp.WithAlpha(0)], [0, 0.45f, 1], SKShaderTileMode.Clamp);
            using SKPaint haze = new() { Shader = shader, IsAntialias = true, IsDither = true };
            canvas.DrawCircle(centre, (float)size, haze);
        });
    }

    private static Outline Leg(double x0, double y0, double x1, double y1, double x2, double y2)
    {
        const double half = 0.016;
        return new Outline().M(x0 - (2 * half), y0).L(x1 - half, y1).L(x2 - half, y2).L(x2 + half + 0.10, y2 + 0.012).L(x2 + half, y2 - 0.02).L(x1 + half, y1 - 0.01).L(x0 + (2 * half), y0).Z();
    }
}
