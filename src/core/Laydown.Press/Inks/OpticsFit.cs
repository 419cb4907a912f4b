namespace Laydown.Press.Inks;

/// <summary>The readings behind the optics of an ink set, and how well the model meets them.</summary>
/// <param name="Readings">Names of the readings for people.</param>
/// <param name="Fitted">Day of the fit.</param>
/// <param name="MeanDeltaE">Mean ΔE00 between readings and model, D50 and 2°.</param>
/// <param name="P95DeltaE">95th percentile.</param>
/// <param name="MaxDeltaE">Largest.</param>
/// <param name="MeanDeltaTPercent">Mean difference of luminous transmittance, percent of the lamp; 0 where nothing was read through.</param>
/// <param name="P95DeltaTPercent">95th percentile.</param>
/// <param name="MaxDeltaTPercent">Largest.</param>
/// <param name="Patches">Every reading that was fitted.</param>
/// <param name="Warnings">What is doubtful about the readings, each in a sentence.</param>
public sealed record OpticsFit(
    string Readings,
    DateOnly Fitted,
    double MeanDeltaE,
    double P95DeltaE,
    double MaxDeltaE,
    double MeanDeltaTPercent,
    double P95DeltaTPercent,
    double MaxDeltaTPercent,
    IReadOnlyList<OpticsResidual> Patches,
    IReadOnlyList<string> Warnings);
