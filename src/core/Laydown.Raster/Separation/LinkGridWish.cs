namespace Laydown.Raster.Separation;

/// <summary>What a link's grid is chosen from, and what it may miss.</summary>
/// <param name="Sizes">Nodes along each channel, the smallest first.</param>
/// <param name="Bends">Exponents of the curve before the table: 1 is straight, over 1 puts nodes closer near 0, under 1 closer near 1.</param>
/// <param name="MostRms">Root mean square of what a good grid misses, codes of 255.</param>
/// <param name="MostMax">Most that a good grid misses anywhere, codes of 255.</param>
/// <param name="Samples">Pixels tried, 100 to 10 000 000.</param>
public sealed record LinkGridWish(IReadOnlyList<int> Sizes, IReadOnlyList<double> Bends, double MostRms, double MostMax, int Samples)
{
    /// <summary>From RGB: up to 65 nodes, 4.4 MB with eight inks.</summary>
    public static LinkGridWish Rgb { get; } = new([17, 33, 49, 65], [1, 1.4, 2], 0.25, 4, 200_000);

    /// <summary>From CMYK: up to 23 nodes, 4.5 MB with eight inks.</summary>
    public static LinkGridWish Cmyk { get; } = new([9, 13, 17, 23], [1, 1.4], 0.25, 4, 200_000);
}
