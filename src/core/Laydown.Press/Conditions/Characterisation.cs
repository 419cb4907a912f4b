namespace Laydown.Press.Conditions;

/// <summary>Which readings a print condition's model was fitted to, and how well it predicts patches it has not seen.</summary>
/// <param name="Folder">Folder with readings, model and residuals below <c>characterisations/</c> and the condition's id; without parent.</param>
/// <param name="Readings">Name of the readings for people.</param>
/// <param name="Fitted">Day of the fit.</param>
/// <param name="Patches">Patches predicted from the others.</param>
/// <param name="MeanDeltaE">Mean of their ΔE00.</param>
/// <param name="P95DeltaE">95th percentile.</param>
/// <param name="MaxDeltaE">Largest.</param>
public sealed record Characterisation(
    string Folder, string Readings, DateOnly Fitted, int Patches, double MeanDeltaE, double P95DeltaE, double MaxDeltaE);
