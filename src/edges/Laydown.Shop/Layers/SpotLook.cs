using Laydown.Colour.Spaces;
using Laydown.Optics.Looks;

namespace Laydown.Shop.Layers;

/// <summary>What is seen at one spot of a stack.</summary>
/// <param name="Line">Line of the file, from 1.</param>
/// <param name="Name">Its name in the file, or empty.</param>
/// <param name="Coverages">Coverages in the order of the columns, 0 to 1.</param>
/// <param name="Reflectance">Reflectance by day, 380 nm to 730 nm by 10 nm, 0 to 1.</param>
/// <param name="Transmittance">Luminance of lamp light seen over that of the lamp, same bands.</param>
/// <param name="DayCdPerM2">Tristimulus values by day, absolute: Y in cd/m².</param>
/// <param name="DayLab">Colour by day.</param>
/// <param name="NightCdPerM2">Tristimulus values with the lamp on, absolute.</param>
/// <param name="NightLab">Colour with the lamp on.</param>
/// <param name="Numbers">Opacity, transmission, density, contrast, show-through.</param>
public sealed record SpotLook(
    int Line,
    string Name,
    IReadOnlyList<double> Coverages,
    IReadOnlyList<double> Reflectance,
    IReadOnlyList<double> Transmittance,
    Xyz DayCdPerM2,
    Lab DayLab,
    Xyz NightCdPerM2,
    Lab NightLab,
    SpotNumbers Numbers);
