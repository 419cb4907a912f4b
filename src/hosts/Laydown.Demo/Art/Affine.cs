namespace Laydown.Demo.Art;

/// <summary>Moves, turns and scales: x' = A·x + C·y + E, y' = B·x + D·y + F.</summary>
internal readonly record struct Affine(double A, double B, double C, double D, double E, double F)
{
    /// <summary>Scaled by <paramref name="size"/>, mirrored left to right when asked, turned clockwise by degrees (y downward), then moved.</summary>
    public static Affine Place(double x, double y, double size, double degrees = 0, bool mirrored = false)
    {
        (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
        double across = mirrored ? -size : size;
        return new(across * cos, across * sin, -size * sin, size * cos, x, y);
    }

    /// <summary>A place after it.</summary>
    public (double X, double Y) Of(double x, double y) => ((A * x) + (C * y) + E, (B * x) + (D * y) + F);
}
