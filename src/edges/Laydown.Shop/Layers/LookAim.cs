using Laydown.Colour.Spaces;

namespace Laydown.Shop.Layers;

/// <summary>What a solved look aims at, the same for the whole piece.</summary>
/// <param name="WhiteStrengths">Strengths of the white that were chosen, of full laydown.</param>
/// <param name="LiftPercent">Black point of the day picture, percent.</param>
/// <param name="NightExposure">Brightness of the night picture's white as a share of the brightest that can be printed.</param>
/// <param name="DayWhiteCdPerM2">Luminance of the white by day, cd/m².</param>
/// <param name="NightWhiteCdPerM2">Luminance of the night picture's white, cd/m².</param>
/// <param name="Because">Why these were chosen, in sentences.</param>
public sealed record LookAim(
    IReadOnlyList<double> WhiteStrengths,
    double LiftPercent,
    double NightExposure,
    double DayWhiteCdPerM2,
    double NightWhiteCdPerM2,
    IReadOnlyList<string> Because)
{
    /// <summary>The white the eye takes by day, X, Y, Z in cd/m²: what the wish by day is measured against; null in records of before it was kept.</summary>
    public Xyz? DayWhite { get; init; }

    /// <summary>The white it takes with the lamp on, alike.</summary>
    public Xyz? NightWhite { get; init; }
}
