namespace Laydown.Formats.Pdf;

/// <summary>How much work one PDF may make.</summary>
/// <param name="Pages">Most pages.</param>
/// <param name="Operations">Most drawing operations followed on one page, forms included.</param>
/// <param name="SideMm">Longest side of a page at its effective size, mm.</param>
public sealed record PdfLimits(int Pages, long Operations, double SideMm)
{
    /// <summary>Longest stream once it is unpacked, bytes.</summary>
    public long StreamBytes { get; init; } = 256 << 20;
}
