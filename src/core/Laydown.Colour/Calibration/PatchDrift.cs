namespace Laydown.Colour.Calibration;

/// <summary>How one patch moved.</summary>
/// <param name="Id">The kept reading's id.</param>
/// <param name="Inks">Ink asked for, parts of one full ink.</param>
/// <param name="Difference">ΔE00 between the kept reading and the new one, means of repeats.</param>
public sealed record PatchDrift(string Id, IReadOnlyList<double> Inks, double Difference);
