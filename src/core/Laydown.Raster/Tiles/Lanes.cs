namespace Laydown.Raster.Tiles;

/// <summary>How wide a kernel works. All widths give the same bytes; the plain one is there to be read and to hold the others to.</summary>
internal enum Lanes
{
    /// <summary>One value after the other.</summary>
    Plain,

    /// <summary>256 bits at once, by AVX2.</summary>
    Wide256,

    /// <summary>512 bits at once, by AVX-512 with its byte permutes.</summary>
    Wide512,
}
