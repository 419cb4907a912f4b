using Laydown.Measures;

namespace Laydown.Formats.Pdf;

/// <summary>Boxes of a PDF page as it is seen: turned by its rotation, UserUnit multiplied in, mm from the lower left corner of its media box.</summary>
/// <param name="UserUnit">The page's UserUnit.</param>
/// <param name="Rotation">Clockwise turn, 0, 90, 180 or 270 degrees.</param>
/// <param name="MediaMm">Size of the media box.</param>
/// <param name="TrimMm">Trim box; the media box where there is none.</param>
/// <param name="BleedMm">Bleed box; the trim box where there is none.</param>
/// <param name="HasTrimBox">Whether the page gives a trim box.</param>
/// <param name="HasBleedBox">Whether the page gives a bleed box.</param>
/// <param name="ToMm">From the page's own units to mm of the page as seen.</param>
public sealed record PageBoxes(
    double UserUnit, int Rotation, SizeMm MediaMm, RectMm TrimMm, RectMm BleedMm, bool HasTrimBox, bool HasBleedBox, Affine ToMm);
