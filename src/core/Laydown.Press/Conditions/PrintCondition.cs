namespace Laydown.Press.Conditions;

/// <summary>Press + mode + ink set + stock as calibrated: limits, linearisation, profile.</summary>
/// <param name="Id">Stable short name, lower case with hyphens.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Invented">Whether it is invented for the demo.</param>
/// <param name="PressId">The press.</param>
/// <param name="ModeIds">Modes it holds for.</param>
/// <param name="InkSetId">The ink set.</param>
/// <param name="StockIds">Stocks it holds for.</param>
/// <param name="Profile">File name of its ICC profile (CMYK, output class), without folder.</param>
/// <param name="TotalLimitPercent">Largest sum of colour inks, percent of one full ink.</param>
/// <param name="Inks">Limit and linearisation of each ink.</param>
/// <param name="LightInkTakeOverPercent">Tone of the dark ink at which the light ink has reached its most and the dark ink starts, percent.</param>
/// <param name="WhiteLayerPercent">Strength of one white layer, percent of full laydown.</param>
/// <param name="RoomLux">Room light its proofs are drawn for, lux.</param>
/// <param name="Characterisation">Readings and model behind it, or null while it rests on none.</param>
/// <param name="InkProfile">File name of an ICC profile of all its colour inks, without folder; null while there is none.</param>
/// <param name="InkLink">File name of a device link from CMYK to all its colour inks, without folder; null while there is none.</param>
/// <param name="OpticsId">Optics of the inks as this condition lays them down, or null where those of the ink set hold.</param>
public sealed record PrintCondition(
    string Id,
    string Name,
    bool Invented,
    string PressId,
    IReadOnlyList<string> ModeIds,
    string InkSetId,
    IReadOnlyList<string> StockIds,
    string Profile,
    double TotalLimitPercent,
    IReadOnlyList<InkLimit> Inks,
    double LightInkTakeOverPercent,
    double WhiteLayerPercent,
    double RoomLux,
    Characterisation? Characterisation = null,
    string? InkProfile = null,
    string? InkLink = null,
    string? OpticsId = null);
