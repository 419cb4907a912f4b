using Laydown.Measures;

namespace Laydown.Formats.PdfWriting;

/// <summary>Boxes of a page, in mm from the media's lower left corner.</summary>
/// <param name="Media">The whole page, mm; with <paramref name="UserUnit"/> each side at most 14 400 units.</param>
/// <param name="Trim">Finished piece; null for a page without trim box.</param>
/// <param name="Bleed">Bleed box; null for a page without.</param>
/// <param name="UserUnit">Units of 1/72 inch that one unit of the page stands for; at least 1.</param>
public sealed record PdfPageSize(SizeMm Media, RectMm? Trim, RectMm? Bleed, double UserUnit = 1)
{
    /// <summary>A page that is the finished piece and bleed all round.</summary>
    public static PdfPageSize WithBleed(double widthMm, double heightMm, double bleedMm)
    {
        RectMm whole = new(0, 0, widthMm + (2 * bleedMm), heightMm + (2 * bleedMm));
        return new(whole.Size, whole.Grown(-bleedMm), whole);
    }
}
