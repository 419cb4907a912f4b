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
    IReadOnlyList<string> Because);
