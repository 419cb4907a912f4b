namespace Laydown.Layout.Contours;

/// <summary>A whole-numbered point or way.</summary>
internal readonly record struct TilePoint(long X, long Y)
{
    public static TilePoint operator +(TilePoint a, TilePoint b) => new(a.X + b.X, a.Y + b.Y);

    public static TilePoint operator -(TilePoint a, TilePoint b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>Over 0 where <paramref name="b"/> points to the left of <paramref name="a"/>.</summary>
    internal static long Cross(TilePoint a, TilePoint b) => (a.X * b.Y) - (a.Y * b.X);

    internal static long Dot(TilePoint a, TilePoint b) => (a.X * b.X) + (a.Y * b.Y);

    /// <summary>The same direction with the least whole numbers.</summary>
    internal TilePoint Direction()
    {
        long a = Math.Abs(X), b = Math.Abs(Y);
        while (b != 0)
            (a, b) = (b, a % b);
        return a == 0 ? this : new(X / a, Y / a);
    }
}
