using Laydown.Measures;

namespace Laydown.Artwork.Pages;

/// <summary>An outline to cut, flattened to 0.1 mm, in mm of the page.</summary>
/// <param name="Points">At least two corners in order; a closed path does not repeat its first.</param>
/// <param name="Closed">Whether it returns to its first corner.</param>
/// <param name="ProcessStep">ISO 19593-1 type, such as <c>Cutting</c> or <c>PartialCutting</c>.</param>
public sealed record CutPath(IReadOnlyList<PointMm> Points, bool Closed, string ProcessStep);
