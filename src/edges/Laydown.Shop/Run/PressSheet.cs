using Laydown.Measures;

namespace Laydown.Shop.Run;

/// <summary>A made sheet as it can be looked at: its first printed face up, as it lies on the belt; level 0 has every value of its files.</summary>
/// <param name="RunId">The run.</param>
/// <param name="Number">Sheet from 1.</param>
/// <param name="IsDots">Whether its dots are shown, else contone.</param>
/// <param name="WidthPx">Values across.</param>
/// <param name="HeightPx">Values down.</param>
/// <param name="Levels">Number of levels; each has half the values of the one before each way, rounded up.</param>
/// <param name="MmPerPx">Millimetres from value to value across.</param>
/// <param name="MmPerPxDown">The same down.</param>
/// <param name="SizeMm">Size of the sheet.</param>
/// <param name="Planes">Its inks, layer by layer in print order.</param>
/// <param name="Pieces">What lies on it.</param>
/// <param name="Lit">Whether a lamp stands behind the piece.</param>
/// <param name="FromBehind">Whether the first printed face is the second surface: pictures read mirrored on the belt.</param>
/// <param name="RoomMost">Light of the highest code of a tile by the room, when all layers are seen.</param>
/// <param name="LampMost">The same by the lamp.</param>
/// <param name="LampWhite">Light of the piece without colour, its whites at full, by a lamp of one: what the eye takes for white when the lamp is on.</param>
/// <param name="FullMlPerM2">Ink of a full laydown, ml/m².</param>
/// <param name="Mark">Short hash of files and optics: addresses with it may be kept for good.</param>
public sealed record PressSheet(
    string RunId,
    int Number,
    bool IsDots,
    int WidthPx,
    int HeightPx,
    int Levels,
    double MmPerPx,
    double MmPerPxDown,
    SizeMm SizeMm,
    IReadOnlyList<PressPlane> Planes,
    IReadOnlyList<PlacedName> Pieces,
    bool Lit,
    bool FromBehind,
    double RoomMost,
    double LampMost,
    IReadOnlyList<double> LampWhite,
    double FullMlPerM2,
    string Mark)
{
    /// <summary>Whether both contone and dots of the sheet are there.</summary>
    public bool HasBoth { get; init; }

    /// <summary>Layers.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public int Layers => Planes.Select(p => p.Layer).DefaultIfEmpty(0).Max();
}
