using Laydown.Colour.Calibration;
using Laydown.Colour.Fits;

namespace Laydown.Shop.Colour;

/// <summary>A reading of a print condition kept after its characterisation: a control strip, a verification.</summary>
/// <param name="Id">When it was taken, as its file is named.</param>
/// <param name="Taken">When it was taken.</param>
/// <param name="Name">Name of the readings.</param>
/// <param name="Against">Folder of the characterisation it was compared with.</param>
/// <param name="Predicted">Measured against predicted, ΔE00.</param>
/// <param name="Drift">Compared with the kept readings, or null where they share too few patches.</param>
/// <param name="DriftMissing">Why there is no comparison; empty where there is one.</param>
/// <param name="Worst">Patches farthest from their prediction, at most twenty.</param>
public sealed record KeptReading(
    string Id,
    DateTimeOffset Taken,
    string Name,
    string Against,
    ResidualSummary Predicted,
    DriftReport? Drift,
    string DriftMissing,
    IReadOnlyList<PatchResidual> Worst);
