namespace Laydown.Press.Inks;

/// <summary>One reading beside what the fitted optics say of it.</summary>
/// <param name="Id">Name of the patch.</param>
/// <param name="Inks">What lies there, in words, such as <c>White 60 %</c>.</param>
/// <param name="Way">How it was read: <c>over black</c>, <c>over white</c> or <c>through</c>.</param>
/// <param name="DeltaE">ΔE00 between reading and model, D50 and 2°.</param>
/// <param name="DeltaYPercent">Model less reading: luminous reflectance or transmittance, percent.</param>
public sealed record OpticsResidual(string Id, string Inks, string Way, double DeltaE, double DeltaYPercent);
