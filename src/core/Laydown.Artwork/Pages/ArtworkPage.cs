using Laydown.Measures;

namespace Laydown.Artwork.Pages;

/// <summary>One page of a PDF, or one image, as measured.</summary>
/// <param name="Number">From 1.</param>
/// <param name="UserUnit">PDF UserUnit; 1 for everything else. Boxes below already contain it.</param>
/// <param name="MediaMm">Size of the whole page or image as the file says it, mm.</param>
/// <param name="TrimMm">Finished piece, mm from the media's lower left corner; the whole page where the file has no trim box.</param>
/// <param name="BleedMm">Bleed box, mm; equal to the trim where the file has none.</param>
/// <param name="HasTrimBox">Whether the file itself gives a trim box.</param>
/// <param name="PixelWidth">Pixels across, for an image file; 0 for PDF and SVG.</param>
/// <param name="PixelHeight">Pixels down, for an image file; 0 for PDF and SVG.</param>
/// <param name="ColourSpaces">Colour spaces in use, such as <c>DeviceRGB</c>, <c>ICCBased(4)</c>, <c>Separation</c>.</param>
/// <param name="Profile">Description of the image's or page group's ICC profile, or null.</param>
/// <param name="HasAlpha">Whether an image carries alpha.</param>
/// <param name="Transparency">Whether a PDF page uses transparency.</param>
/// <param name="Overprint">Whether a PDF page switches overprint on.</param>
/// <param name="HiddenLayers">Optional content that is off by default.</param>
/// <param name="Images">Pictures on the page; for an image file the one picture.</param>
/// <param name="Fonts">Fonts of the page.</param>
/// <param name="Separations">Named separations besides the process inks.</param>
/// <param name="SmallestTexts">The smallest text of each size found, smallest first, at most 20.</param>
/// <param name="ThinnestLines">The thinnest strokes found, thinnest first, at most 20.</param>
/// <param name="CutPaths">Outlines stroked in a separation that means cutting.</param>
/// <param name="TotalInkPercent">Highest total ink found in CMYK content, percent; null when it has none.</param>
/// <param name="TotalInkPlace">Where that is.</param>
/// <param name="Codes">Bar codes found.</param>
public sealed record ArtworkPage(
    int Number,
    double UserUnit,
    SizeMm MediaMm,
    RectMm TrimMm,
    RectMm BleedMm,
    bool HasTrimBox,
    int PixelWidth,
    int PixelHeight,
    IReadOnlyList<string> ColourSpaces,
    string? Profile,
    bool HasAlpha,
    bool Transparency,
    bool Overprint,
    IReadOnlyList<string> HiddenLayers,
    IReadOnlyList<PlacedImage> Images,
    IReadOnlyList<FontUse> Fonts,
    IReadOnlyList<NamedSeparation> Separations,
    IReadOnlyList<TextUse> SmallestTexts,
    IReadOnlyList<LineUse> ThinnestLines,
    IReadOnlyList<CutPath> CutPaths,
    double? TotalInkPercent,
    RectMm? TotalInkPlace,
    IReadOnlyList<CodeUse> Codes)
{
    /// <summary>Where text stands, word by word (of long texts line by line), mm of the page, at most 500 places; empty for images, and for files measured before places were kept.</summary>
    public IReadOnlyList<RectMm> TextPlaces { get; init; } = [];
}
