using Laydown.Layout.Sheets;

namespace Laydown.Layout.Contours;

/// <summary>A layout of contours.</summary>
/// <param name="Sheets">The boards used, one after the other; one sheet for a strip, none where nothing was placed.</param>
/// <param name="LengthMm">Used length of the strip with both margins, mm; for boards the used length of the last board along x, mm.</param>
/// <param name="Cost">Sum of the prices of the boards used; 0 for a strip.</param>
/// <param name="FillShare">Area of the pieces placed over the area of the boards used, or of the strip's used length: 0 to 1.</param>
/// <param name="Unplaced">Copies without a place, with the reason.</param>
public sealed record ContourResult(
    IReadOnlyList<ContourSheet> Sheets, double LengthMm, double Cost, double FillShare, IReadOnlyList<UnplacedPiece> Unplaced)
{
    /// <summary>Whether all pieces have a place.</summary>
    public bool IsWhole => Unplaced.Count == 0;
}
