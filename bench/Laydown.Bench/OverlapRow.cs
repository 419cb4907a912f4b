namespace Laydown.Bench;

/// <summary>A PDF page made into dots while Ghostscript still renders it, beside both one after the other; wall time, best of two.</summary>
/// <param name="What">The page.</param>
/// <param name="Megapixels">Pixels of the page, million.</param>
/// <param name="RasterSeconds">Rendering alone, s.</param>
/// <param name="RestSeconds">Colour, screen and files alone, from plates that are there, s.</param>
/// <param name="TogetherSeconds">Both at once, s.</param>
internal sealed record OverlapRow(string What, double Megapixels, double RasterSeconds, double RestSeconds, double TogetherSeconds)
{
    /// <summary>Together against the longer of the two.</summary>
    public double Ratio => TogetherSeconds / Math.Max(RasterSeconds, RestSeconds);
}
