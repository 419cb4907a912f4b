using Laydown.Measures;

namespace Laydown.Colour.Calibration;

/// <summary>What a new reading says of an earlier calibration.</summary>
/// <param name="Verdict">What to do.</param>
/// <param name="Reasons">What led to it, each in a sentence; for <see cref="DriftVerdict.Use"/> the nearest to a limit.</param>
/// <param name="Paper">Change of the bare stock, ΔE00.</param>
/// <param name="MeanDifference">Mean change over all patches, ΔE00.</param>
/// <param name="OverprintMean">Mean change over patches of several inks, ΔE00; null where there are none.</param>
/// <param name="Inks">Change of each ink.</param>
/// <param name="Patches">Change of each patch, in the order of the kept readings.</param>
public sealed record DriftReport(
    DriftVerdict Verdict, IReadOnlyList<string> Reasons, Figure Paper, Figure MeanDifference, Figure? OverprintMean,
    IReadOnlyList<InkDrift> Inks, IReadOnlyList<PatchDrift> Patches);
