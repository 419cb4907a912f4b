using Laydown.Measures;

namespace Laydown.Formats.Pdf;

/// <summary>An affine map as PDF writes it: x' = A x + C y + E, y' = B x + D y + F.</summary>
/// <param name="A">First coefficient.</param>
/// <param name="B">Second coefficient.</param>
/// <param name="C">Third coefficient.</param>
/// <param name="D">Fourth coefficient.</param>
/// <param name="E">Shift along x.</param>
/// <param name="F">Shift along y.</param>
/// <remarks><c>default</c> maps all to the origin.</remarks>
public readonly record struct Affine(double A, double B, double C, double D, double E, double F)
{
    /// <summary>The map that changes nothing.</summary>
    public static Affine Identity { get; } = new(1, 0, 0, 1, 0, 0);

    /// <summary>Lengths along the map's two columns.</summary>
    public (double X, double Y) ColumnLengths => (Math.Sqrt((A * A) + (B * B)), Math.Sqrt((C * C) + (D * D)));

    /// <summary>The smaller factor by which the map stretches any length (its smaller singular value).</summary>
    public double LeastStretch
    {
        get
        {
            // Half the difference of two lengths: exact for maps that only scale and turn, where the textbook root loses half its digits.
            double one = Math.Sqrt(((A + D) * (A + D)) + ((B - C) * (B - C)));
            double other = Math.Sqrt(((A - D) * (A - D)) + ((B + C) * (B + C)));
            return Math.Abs(one - other) / 2;
        }
    }

    /// <summary>This map first, then <paramref name="next"/>.</summary>
    public Affine Then(Affine next) => new(
        (A * next.A) + (B * next.C),
        (A * next.B) + (B * next.D),
        (C * next.A) + (D * next.C),
        (C * next.B) + (D * next.D),
        (E * next.A) + (F * next.C) + next.E,
        (E * next.B) + (F * next.D) + next.F);

    /// <summary>Where a point goes.</summary>
    public PointMm Map(double x, double y) => new((A * x) + (C * y) + E, (B * x) + (D * y) + F);

    /// <summary>The upright rectangle around a mapped rectangle.</summary>
    public RectMm MapBox(double left, double bottom, double right, double top)
    {
        PointMm one = Map(left, bottom), two = Map(right, bottom), three = Map(left, top), four = Map(right, top);
        double x = Math.Min(Math.Min(one.XMm, two.XMm), Math.Min(three.XMm, four.XMm));
        double y = Math.Min(Math.Min(one.YMm, two.YMm), Math.Min(three.YMm, four.YMm));
        return new(
            x,
            y,
            Math.Max(Math.Max(one.XMm, two.XMm), Math.Max(three.XMm, four.XMm)) - x,
            Math.Max(Math.Max(one.YMm, two.YMm), Math.Max(three.YMm, four.YMm)) - y);
    }
}
