namespace Laydown.Optics.Panels;

/// <summary>What a plan reaches, in figures.</summary>
/// <param name="Day">Day view against what is aimed at.</param>
/// <param name="Night">Lit view against what is aimed at.</param>
/// <param name="DayToPicture">Day view against the picture as it came, to day white; includes lifted blacks.</param>
/// <param name="DayContrastPercent">Local contrast of lightness that is kept by day, percent of what is aimed at.</param>
/// <param name="NightContrastPercent">The same when lit.</param>
/// <param name="UnreachablePercent">Share of pixels over 3 ΔE00 in a view, percent.</param>
/// <param name="Reasons">Why, largest share first.</param>
/// <param name="Leak">How far the night layer moves the day view where it lies, were nothing done against it: with and without it.</param>
/// <param name="Ghost">What of the night picture is left in the day view: day view with the night picture against with its local mean,
/// weighted by the eye's contrast sensitivity at the viewing distance.</param>
/// <param name="GhostCorrelation">Correlation of what is left by day with the night picture, −1 to 1; 0: nothing of it is seen.</param>
/// <param name="NightLightLostPercent">Light of the brightest lit area that day white costs there, percent.</param>
/// <param name="DayWhiteLStar">L* of day white against a perfect diffuser.</param>
/// <param name="NightWhiteCdPerM2">Luminance of night white.</param>
/// <param name="NightMeanCdPerM2">Mean luminance of the lit picture.</param>
/// <param name="NightContrast">Luminance of its lightest over its darkest hundredth, room light included.</param>
/// <param name="NightContrastDarkRoom">The same without room light.</param>
/// <param name="MeanInk">Mean laydown of every coverage in print order, parts of one full ink.</param>
/// <param name="MeanWhiteStrength">Mean strength of the white, share of full laydown.</param>
/// <param name="Robustness">How far the views move when something is not as planned.</param>
public sealed record PanelReport(
    DifferenceSummary Day,
    DifferenceSummary Night,
    DifferenceSummary DayToPicture,
    double DayContrastPercent,
    double NightContrastPercent,
    double UnreachablePercent,
    IReadOnlyList<ReasonShare> Reasons,
    DifferenceSummary Leak,
    DifferenceSummary Ghost,
    double GhostCorrelation,
    double NightLightLostPercent,
    double DayWhiteLStar,
    double NightWhiteCdPerM2,
    double NightMeanCdPerM2,
    double NightContrast,
    double NightContrastDarkRoom,
    IReadOnlyList<double> MeanInk,
    double MeanWhiteStrength,
    IReadOnlyList<RobustnessRow> Robustness);
