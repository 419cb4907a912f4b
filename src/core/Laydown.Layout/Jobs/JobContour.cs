namespace Laydown.Layout.Jobs;

/// <summary>A contour: its corners, or where they are to be taken from.</summary>
/// <param name="OuterMm">Corners of the outer ring, x, y, x, y …, mm; the last is joined to the first. Null where another field gives it.</param>
/// <param name="HolesMm">Corners of each hole; null for none.</param>
/// <param name="Path">Path data as SVG writes it, in mm, y upward; null where another field gives the contour.</param>
/// <param name="File">A DXF or SVG file beside the job; null where another field gives the contour. Further shapes of the file are further pieces.</param>
public sealed record JobContour(
    IReadOnlyList<double>? OuterMm, IReadOnlyList<IReadOnlyList<double>>? HolesMm, string? Path = null, string? File = null);
