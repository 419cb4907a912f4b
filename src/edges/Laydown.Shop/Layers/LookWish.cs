namespace Laydown.Shop.Layers;

/// <summary>What was wished when a look was solved.</summary>
/// <param name="NightWeight">Weight of the night picture against the day picture: 0.1 day first, 1 balanced, 10 night first; 0.01 to 100.</param>
/// <param name="White">How strong the white may be.</param>
/// <param name="WhiteStrengths">Strengths of the white, of full laydown, 0 to 1: one if fixed, the steps if stepped, least and most if free;
/// none for the strength that the build orders.</param>
/// <param name="LiftPercent">Black point of the day picture, percent of the lightness of white; null for chosen by the solver.</param>
/// <param name="NightExposure">Brightness of the night picture's white as a share of the brightest that can be printed; null for chosen.</param>
/// <param name="KeepContrast">Whether local contrast is kept where a picture cannot be reached.</param>
/// <param name="ViewingDistanceMm">From how far it is looked at, mm.</param>
public sealed record LookWish(
    double NightWeight,
    WhiteChoice White,
    IReadOnlyList<double> WhiteStrengths,
    double? LiftPercent,
    double? NightExposure,
    bool KeepContrast,
    double ViewingDistanceMm)
{
    /// <summary>Balanced, the white as the build orders it, everything else chosen, seen from 2 m.</summary>
    public static LookWish Usual { get; } = new(1, WhiteChoice.Fixed, [], null, null, true, 2000);
}
