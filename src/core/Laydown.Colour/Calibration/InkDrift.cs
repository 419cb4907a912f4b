namespace Laydown.Colour.Calibration;

/// <summary>How one ink moved.</summary>
/// <param name="Ink">Name of the ink.</param>
/// <param name="ToneChangePercent">Largest change of tone value, percent, with its sign: over 0 prints darker or fuller.</param>
/// <param name="AtPercent">Step at which it is largest, percent of one full ink.</param>
/// <param name="SolidDifference">ΔE00 of the full ink.</param>
public sealed record InkDrift(string Ink, double ToneChangePercent, double AtPercent, double SolidDifference);
