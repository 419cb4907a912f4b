namespace Laydown.Shop.Layers;

/// <summary>How near a solved look comes to its two pictures, and what it costs.</summary>
/// <param name="Day">By day, to what was aimed at.</param>
/// <param name="Night">With the lamp on, to what was aimed at.</param>
/// <param name="DayToPicture">By day, to the picture as it came.</param>
/// <param name="NightToPicture">With the lamp on, to the picture as it came.</param>
/// <param name="UnreachablePercent">Share of the piece where one of the aims cannot be reached, percent.</param>
/// <param name="Reasons">Why, each with its share.</param>
/// <param name="GhostMean">How much of the night picture shows by day to the eye at the viewing distance, mean ΔE.</param>
/// <param name="GhostP95">The same, 95th percentile.</param>
/// <param name="LeakP95">Change of the day view by the night layer, pixel by pixel, 95th percentile, ΔE00.</param>
/// <param name="NightLightLostPercent">Night light given up so that the night picture does not show by day, percent.</param>
/// <param name="NightMostCdPerM2">Brightest spot at night, cd/m².</param>
/// <param name="NightMeanCdPerM2">Mean luminance at night, cd/m².</param>
/// <param name="NightLeastCdPerM2">Darkest spot at night, cd/m².</param>
/// <param name="MeanInk">Mean laydown of every plane in file order, 1 = full.</param>
/// <param name="Changes">How it changes when white, ink, register or lamp differ.</param>
/// <param name="Notes">What else is to be known, in sentences.</param>
/// <param name="DayContrastPercent">Local contrast kept by day, percent of what is aimed at.</param>
/// <param name="NightContrastPercent">The same with the lamp on.</param>
/// <param name="DayWhiteLStar">L* of the day picture's white against a perfect diffuser.</param>
/// <param name="NightContrast">Luminance of the lightest over the darkest hundredth at night, room light included.</param>
/// <param name="NightContrastDarkRoom">The same without room light.</param>
/// <param name="GhostCorrelation">Correlation of what is left by day with the night picture, −1 to 1.</param>
/// <param name="MeanWhiteStrength">Mean strength of the white, share of full laydown.</param>
public sealed record LookReport(
    LookDifference Day,
    LookDifference Night,
    LookDifference DayToPicture,
    LookDifference NightToPicture,
    double UnreachablePercent,
    IReadOnlyList<LookReason> Reasons,
    double GhostMean,
    double GhostP95,
    double LeakP95,
    double NightLightLostPercent,
    double NightMostCdPerM2,
    double NightMeanCdPerM2,
    double NightLeastCdPerM2,
    IReadOnlyList<double> MeanInk,
    IReadOnlyList<LookChange> Changes,
    IReadOnlyList<string> Notes,
    double DayContrastPercent = 100,
    double NightContrastPercent = 100,
    double DayWhiteLStar = 0,
    double NightContrast = 1,
    double NightContrastDarkRoom = 1,
    double GhostCorrelation = 0,
    double MeanWhiteStrength = 1);
