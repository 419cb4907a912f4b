using Laydown.Measures;

namespace Laydown.Raster.Masks;

/// <summary>All whole-pixel steps (dx, dy) no longer than R: how far a disc reaches in each row.</summary>
/// <remarks>With square pixels dx² + dy² ≤ R²; with others (w dx)² + (h dy)² ≤ (w R)², w and h being width and height of a pixel in units.</remarks>
internal sealed class Disc
{
    private readonly int[] halfWidths;
    private readonly PixelShape shape;

    /// <summary>A disc of radius <paramref name="radiusPixels"/>, 0 to 4096 pixel widths, whole or not.</summary>
    public Disc(double radiusPixels, PixelShape shape)
    {
        RadiusPixels = Bounds.Within(radiusPixels, 0, 4096);
        this.shape = shape;
        ReachColumns = (int)Math.Floor(radiusPixels);
        ReachRows = (int)Math.Floor(radiusPixels * shape.Width / shape.Height);
        while (Inside(0, ReachRows + 1))
            ReachRows++;
        while (!Inside(0, ReachRows))
            ReachRows--;
        halfWidths = [.. Enumerable.Range(0, ReachRows + 1).Select(WidthOf)];
    }

    public double RadiusPixels { get; }

    /// <summary>Columns to each side of the centre that the disc touches.</summary>
    public int ReachColumns { get; }

    /// <summary>Rows above and below the centre that the disc touches.</summary>
    public int ReachRows { get; }

    /// <summary>The greater of both.</summary>
    public int Reach => Math.Max(ReachColumns, ReachRows);

    /// <summary>How far it reaches to each side in the row <paramref name="dy"/> away; −1 beyond its reach.</summary>
    public int HalfWidth(int dy) => dy <= ReachRows ? halfWidths[dy] : -1;

    private int WidthOf(int dy)
    {
        // The root is only a start: whole numbers decide, so that no rounding moves an edge.
        double down = dy * (double)shape.Height / shape.Width;
        int width = (int)Math.Sqrt(Math.Max(0, (RadiusPixels * RadiusPixels) - (down * down)));
        while (Inside(width + 1, dy))
            width++;
        while (!Inside(width, dy))
            width--;
        return width;
    }

    private bool Inside(long dx, long dy)
    {
        double radius = RadiusPixels * shape.Width;
        return (shape.Width * dx * shape.Width * dx) + (shape.Height * dy * shape.Height * dy) <= radius * radius;
    }
}
