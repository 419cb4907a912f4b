using Laydown.Press.Machines;

namespace Laydown.Shop.Run;

/// <summary>Passes of a run or a mode, and the bands to be seen.</summary>
/// <param name="RunId">The run, or null for a mode alone.</param>
/// <param name="PressId">The press.</param>
/// <param name="ModeId">The mode.</param>
/// <param name="ViewingDistanceM">Distance of the nearest viewer, m.</param>
/// <param name="Placement">Placement the forecast rests on.</param>
/// <param name="PlacementAssumed">Whether it was assumed, because the press does not tell its own.</param>
/// <param name="FromPicture">Whether the forecast rests on the run's own press files; else on tones of every ink.</param>
/// <param name="Mended">Whether the run has dots in which missing nozzles are made good.</param>
/// <param name="Faces">Passes of each printed face.</param>
/// <param name="Bands">Forecast of the mode, then of the others of the press.</param>
public sealed record PassesView(
    string? RunId, string PressId, string ModeId, double ViewingDistanceM, DotPlacement Placement, bool PlacementAssumed, bool FromPicture, bool Mended,
    IReadOnlyList<FacePasses> Faces, IReadOnlyList<ModeBands> Bands);
