using Laydown.Colour.Spaces;

namespace Laydown.Colour.Calibration;

/// <summary>One step of a wedge: the mean of its readings.</summary>
/// <param name="Ink">Ink asked for, parts of one full ink, 0 to 1.</param>
/// <param name="Lab">Mean colour, D50, 2° observer.</param>
/// <param name="Reads">Readings behind the mean, at least 1.</param>
public sealed record WedgeStep(double Ink, Lab Lab, int Reads);
