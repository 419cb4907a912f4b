using Laydown.Colour.Spaces;

namespace Laydown.Optics.Looks;

/// <summary>What can be said in numbers of one spot of a stack.</summary>
/// <param name="ContrastRatio">Opacity: luminous reflectance over black (0) over that over white (0.8 an air gap away), 0 clear to 1
/// hiding.</param>
/// <param name="TransmissionPercent">Luminance seen over luminance of the lamp, percent.</param>
/// <param name="RelativeTransmissionPercent">The same against the bare sheet, percent; 0 where the sheet lets nothing through.</param>
/// <param name="Density">−log10 of the transmission, 0 to <see cref="MostDensity"/>.</param>
/// <param name="RelativeDensity">−log10 of the relative transmission, at most <see cref="MostDensity"/>.</param>
/// <param name="DayLab">Colour with the lamp off, to an eye adapted to the room.</param>
/// <param name="DayCdPerM2">Luminance with the lamp off, cd/m².</param>
/// <param name="LitLab">Colour with the lamp on, to the viewer that was asked for; L* over 100 for what is brighter than the eye's
/// white.</param>
/// <param name="LitCdPerM2">Luminance with the lamp on, the room's light included, cd/m².</param>
/// <param name="ContrastInRoom">Luminance of the lit piece without colour over that of the spot, both with the room's light; 1 to
/// <see cref="MostContrast"/> for a spot that is darker.</param>
/// <param name="ContrastInDark">The same with the lamp's light alone, at most <see cref="MostContrast"/>.</param>
/// <param name="ShowThrough">ΔE00 between the day view with and without the layers behind the white.</param>
/// <param name="LampGain">How many times brighter the lamp box gets by the light that a piece all like this spot sends back into it, 1 or
/// more; not in the other numbers, whose lamp is as bright as the scene says with the piece before it.</param>
public sealed record SpotNumbers(
    double ContrastRatio,
    double TransmissionPercent,
    double RelativeTransmissionPercent,
    double Density,
    double RelativeDensity,
    Lab DayLab,
    double DayCdPerM2,
    Lab LitLab,
    double LitCdPerM2,
    double ContrastInRoom,
    double ContrastInDark,
    double ShowThrough,
    double LampGain)
{
    /// <summary>Highest density told: less light than a millionth counts as this.</summary>
    public const double MostDensity = 6;

    /// <summary>Highest contrast told.</summary>
    public const double MostContrast = 1_000_000;
}
