using Laydown.Measures;

namespace Laydown.Raster.Masks;

/// <summary>All whole-pixel steps (dx, dy) with dx² + dy² ≤ R²: how far a disc reaches in each row.</summary>
internal sealed class Disc
{
    private readonly int[] halfWidths;

    /// <summary>A disc of radius <paramref name="radiusPixels"/>, 0 to 4096, whole or not.</summary>
    public Disc(double radiusPixels)
    {
        RadiusPixels = Bounds.Within(radiusPixels, 0, 4096);
        Reach = (int)Math.Floor(radiusPixels);
        halfWidths = new int[Reach + 1];
        for (int dy = 0; dy <= Reach; dy++)
        {
            // The root is only a start: whole numbers decide, so that no rounding moves an edge.
            int width = (int)Math.Sqrt((radiusPixels * radiusPixels) - (dy * dy));
            while (Inside(width + 1, dy))
                width++;
            while (!Inside(width, dy))
                width--;
            halfWidths[dy] = width;
        }
    }

    public double RadiusPixels { get; }

    /// <summary>Rows above and below the centre that the disc touches.</summary>
    public int Reach { get; }

    /// <summary>How far it reaches to each side in the row <paramref name="dy"/> away; −1 beyond its reach.</summary>
    public int HalfWidth(int dy) => dy <= Reach ? halfWidths[dy] : -1;

    private bool Inside(long dx, long dy) => (dx * dx) + (dy * dy) <= RadiusPixels * RadiusPixels;
}
