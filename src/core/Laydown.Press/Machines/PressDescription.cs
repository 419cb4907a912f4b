namespace Laydown.Press.Machines;

/// <summary>A press as its owner describes it: belt, zones, lays, channels, tanks, modes. Nothing is built for one machine.</summary>
/// <param name="Id">Stable short name, lower case with hyphens.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Invented">Whether the description is invented for the demo; printed wherever the press is shown.</param>
/// <param name="BeltWidthMm">Printable width across the belt (along the carriage), mm.</param>
/// <param name="MaxSheetLengthMm">Longest sheet along the feed, mm.</param>
/// <param name="MaxThicknessMm">Thickest sheet the heads clear, mm.</param>
/// <param name="EdgeMarginMm">Unprintable margin at each edge of a sheet, mm.</param>
/// <param name="Zones">Vacuum zones across the belt, from its origin side, not overlapping.</param>
/// <param name="Lays">Where the side lay pins can stand, mm across the belt from its origin, ascending.</param>
/// <param name="MaxLanes">Most lanes of blanks side by side; 0 where the press takes none.</param>
/// <param name="MaxLayers">Most ink layers of one stack.</param>
/// <param name="Rolls">Roll stations; empty for a press of boards only.</param>
/// <param name="Channels">Ink channels in the order of the heads.</param>
/// <param name="Tanks">Ink tanks.</param>
/// <param name="Carriage">How the carriage moves.</param>
/// <param name="Lamp">The UV-LED lamps.</param>
/// <param name="Vacuum">Vacuum under the belt.</param>
/// <param name="Modes">Print modes; at least one.</param>
/// <param name="Costs">What an hour of it costs.</param>
/// <param name="Placement">How exactly it puts its dots, or null where nobody measured it; bands are forecast from it.</param>
/// <param name="NozzleStates">What the last nozzle pattern showed; channels not named, or null, are whole.</param>
/// <param name="RollWeb">How rolls are run and cut across; null for 150 mm of lead and sections of any length.</param>
/// <param name="FrontPins">Where pins of the front lay can stand, mm across the belt from its origin, ascending; null where a bar along the whole belt takes their place.</param>
/// <param name="Care">How it is kept fit; null where the owner described nothing, then <see cref="PressCare.Usual"/> holds.</param>
/// <param name="LayErrorMm">How far from its place a sheet lies after it is pushed against a lay, mm either way; null where nobody measured it.</param>
/// <param name="FarSideLay">Whether a side lay can stand at the far side of a sheet, so that a sheet turned over is pushed with the same edge.</param>
public sealed record PressDescription(
    string Id,
    string Name,
    bool Invented,
    double BeltWidthMm,
    double MaxSheetLengthMm,
    double MaxThicknessMm,
    double EdgeMarginMm,
    IReadOnlyList<VacuumZone> Zones,
    IReadOnlyList<double> Lays,
    int MaxLanes,
    int MaxLayers,
    IReadOnlyList<RollStation> Rolls,
    IReadOnlyList<Channel> Channels,
    IReadOnlyList<Tank> Tanks,
    Carriage Carriage,
    Lamp Lamp,
    Vacuum Vacuum,
    IReadOnlyList<Mode> Modes,
    PressCosts Costs,
    DotPlacement? Placement = null,
    IReadOnlyList<NozzleState>? NozzleStates = null,
    RollWeb? RollWeb = null,
    IReadOnlyList<double>? FrontPins = null,
    PressCare? Care = null,
    double? LayErrorMm = null,
    bool FarSideLay = false)
{
    /// <summary>How rolls are run: as described, else as most presses do.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public RollWeb Web => RollWeb ?? new();

    /// <summary>The mode of that id, or null.</summary>
    public Mode? FindMode(string id) => Modes.FirstOrDefault(m => string.Equals(m.Id, id, StringComparison.Ordinal));
}
